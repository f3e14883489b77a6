import { describe, expect, test } from 'vitest';
import {
	close,
	fahrenheit,
	foot,
	gallonHour,
	halving,
	horsepower,
	inch,
	is,
	notKnown,
	num,
	poundFoot,
	poundHour,
	psi,
	sheetOf,
	solved,
} from './by-hand.ts';
import { type Build, breakdown, byHand, dutyOf, e10, petrol } from './chain.ts';

// Three sheets written by hand, and every figure of the core chain worked out again by plain arithmetic from the
// definitions. Two roads to one figure, within 0.1 %.

const engine = {
	'engine.bore': num(4, 'in'),
	'engine.stroke': num(3.25, 'in'),
	'engine.rod': num(5.9, 'in'),
	'engine.compression_ratio': num(9.2, ':1'),
	'engine.intake_closes': num(58, 'deg'),
	'engine.peak_rpm': num(5300, 'rpm'),
	'engine.redline': num(5900, 'rpm'),
	'engine.volumetric_efficiency': num(86, '%'),
	'engine.firing_order': is([1, 8, 4, 3, 6, 5, 7, 2]),
	'engine.compression': num([150, 152, null, 149, 120, 151, 150, 148], 'psi'),
};

/** The same engine in SI. */
const size = { bore: 4 * inch, stroke: 3.25 * inch, rod: 5.9 * inch, ratio: 9.2, closes: 58, rpm: 5300, filling: 0.86 };

const [noBoost, mostBoost] = [0, 40 * psi];

describe('boosted, intercooled, manifold reference', () => {
	const q = solved(
		sheetOf({
			...engine,
			'build.altitude': num(650, 'ft'),
			'build.hot_day': num(90, 'degF'),
			'build.humidity': num(40, '%'),
			'build.power_goal': num(420, 'hp'),
			'fuel.kind': is('petrol'),
			'fuel.rail': is('returnless-controlled-pump'),
			'fuel.pressure': num(43.5, 'psi'),
			'fuel.reference': is('manifold'),
			'fuel.pump_flow': num(70, 'gal/h'),
			'fuel.pump_flow_pressure': num(43.5, 'psi'),
			'fuel.pump_flow_voltage': num(13.5, 'V'),
			'fuel.pump_voltage': num(13.1, 'V'),
			'fuel.pump_current': num(11, 'A'),
			'fuel.pump_wire_gauge': num(12, 'AWG'),
			'fuel.pump_wire_length': num(14, 'ft'),
			'injectors.rated_flow': num(60, 'lb/h'),
			'injectors.dead_time': num(1, 'ms'),
			'ignition.gap': num(0.03, 'in'),
			'ignition.full_load_advance': num(17, 'deg'),
			'boost.kind': is('turbocharger'),
			'boost.target': num(11, 'psi'),
			'boost.compressor_efficiency': num(71, '%'),
			'boost.intercooler': is('air-to-air'),
			'boost.intercooler_effectiveness': num(66, '%'),
			'boost.intercooler_loss': num(1.2, 'psi'),
			'boost.lambda': num(0.8),
			'boost.pipe_bore': num(2.5, 'in'),
			'driveline.gearbox': is('manual'),
			'driveline.gearbox_torque': num(450, 'lb-ft'),
			'driveline.clutch_torque': num(500, 'lb-ft'),
			'harness.key_off_draw': num(85, 'mA'),
			'charging.battery_capacity': num(62, 'Ah'),
		}),
	);
	const build: Build = {
		...size,
		altitude: 650 * foot,
		hotDay: fahrenheit(90),
		boost: 11 * psi,
		cooler: { effectiveness: 0.66, loss: 1.2 * psi },
		compressor: 0.71,
		lambda: 0.8,
		fuel: petrol,
		advance: 17,
	};
	const at = (boost: number) => byHand({ ...build, boost });
	const hand = byHand(build);

	test('air, boost and power', () => {
		close(q('air.ambient_pressure').value, hand.ambient, 'ambient');
		// Vapour pressure by Magnus; vapour is 0.622 times as heavy as air.
		const vapour = 0.4 * 610.94 * Math.exp((17.625 * 32.222) / (32.222 + 243.04));
		close(q('air.ambient_density').value, (hand.ambient - 0.378 * vapour) / (287.05 * fahrenheit(90)), 'moist air');
		close(q('boost.manifold_pressure').value, hand.manifold, 'manifold');
		close(q('boost.pressure_ratio').value, hand.pressureRatio, 'pressure ratio');
		close(q('boost.compressor_outlet_temp').value, hand.outlet, 'outlet');
		close(q('boost.charge_temp').value, hand.charge, 'charge');
		close(q('boost.density_ratio').value, hand.density / (hand.ambient / (287.05 * fahrenheit(90))), 'density ratio');
		close(q('engine.displacement').value, hand.displacement, 'displacement');
		close(q('engine.air_flow').value, hand.air, 'air');
		close(q('engine.power').value, hand.power, 'power');
		close(q('engine.torque').value, hand.torque, 'torque');
		close(q('engine.peak_torque').value, 1.15 * hand.torque, 'peak torque');
		close(q('engine.bmep').value, (120 * hand.power) / (hand.displacement * 5300), 'bmep');
		close(q('engine.mean_piston_speed').value, (2 * 3.25 * inch * 5900) / 60, 'piston speed');
		const corrected = (hand.air * Math.sqrt(fahrenheit(90) / 298.15)) / ((hand.ambient - 1000) / 1e5);
		close(q('boost.compressor_flow_corrected').value, corrected, 'corrected flow');
		close(q('boost.pipe_velocity').value, hand.air / (hand.density * Math.PI * (1.25 * inch) ** 2), 'pipe velocity');
		const goal = halving(boost => at(boost).power - 420 * horsepower, noBoost, mostBoost);
		close(q('boost.for_power_goal').value, goal, 'boost for the goal');
	});

	test('fuel and injectors', () => {
		close(q('fuel.flow').value, hand.fuel, 'fuel');
		close(q('injectors.pressure_across').value, 43.5 * psi, 'across');
		close(q('injectors.flow').value, 60 * poundHour, 'flow');
		const duty = (boost: number) => dutyOf(at(boost).fuel, 60 * poundHour, 5300, 1e-3);
		close(q('injectors.pulse_width').value, (duty(11 * psi) * 120) / 5300, 'pulse');
		close(q('injectors.duty').value, duty(11 * psi), 'duty');
		close(q('injectors.flow_needed').value, (hand.fuel * (120 / 5300)) / 8 / (0.85 * (120 / 5300) - 1e-3), 'needed');
		close(
			q('injectors.boost_limit').value,
			halving(boost => duty(boost) - 0.85, noBoost, mostBoost),
			'boost limit',
		);
	});

	test('the pump, of which one point is known, at its own volts and against the boost', () => {
		const pressure = (boost: number) => 43.5 * psi + boost + 3 * psi;
		const available = (boost: number) =>
			70 * gallonHour * 745 * ((13.1 / 13.5) ** 2 - (0.008 / psi) * (pressure(boost) - 43.5 * psi));
		close(q('fuel.pump_pressure').value, pressure(11 * psi), 'pump pressure');
		close(q('fuel.pump_available').value, available(11 * psi), 'available');
		close(q('fuel.pump_margin').value, available(11 * psi) / hand.fuel - 1, 'margin');
		const limit = halving(boost => at(boost).fuel - available(boost), noBoost, mostBoost);
		close(q('fuel.pump_boost_limit').value, limit, 'pump limit');
		expect(q('fuel.pump_margin').assumed).toContain('fuel.line_loss');
	});

	test('spark', () => {
		close(q('ignition.gas_density_at_spark').value, hand.gas, 'gas');
		const volts = breakdown(hand.gas, 0.03 * inch);
		close(q('ignition.required_voltage').value, volts, 'required');
		close(q('ignition.capacity').value, 27500, 'capacity');
		close(q('ignition.spark_margin').value, 27500 / volts - 1, 'margin');
		close(
			q('ignition.gap_limit').value,
			halving(gap => breakdown(hand.gas, gap) - 27500, 1e-4, 5e-3),
			'gap limit',
		);
		const limit = halving(boost => breakdown(at(boost).gas, 0.03 * inch) - 27500, noBoost, mostBoost);
		close(q('ignition.boost_limit').value, limit, 'boost limit');
		expect(q('ignition.companions').value).toEqual([
			[1, 6],
			[8, 5],
			[4, 7],
			[3, 2],
		]);
	});

	test('compression, wire, battery, clutch and gearbox', () => {
		close(q('engine.effective_compression_ratio').value, hand.effective, 'effective ratio');
		const cranking = hand.ambient * hand.effective ** 1.25 - hand.ambient;
		close(q('engine.cranking_pressure_expected').value, cranking, 'cranking');
		close(q('engine.compression_spread').value, 120 / 152, 'spread');
		const area = (Math.PI / 4) * (0.127e-3 * 92 ** ((36 - 12) / 39)) ** 2;
		close(
			q('fuel.pump_wire_drop').value,
			(11 * 2 * 14 * foot * 1.02 * (1 + 0.00393 * 40) * (1e-6 / 58)) / area,
			'drop',
		);
		close(q('harness.days_to_flat').value, 31 / 0.085 / 24, 'days');
		close(q('driveline.clutch_margin').value, (500 * poundFoot) / (1.15 * hand.torque) - 1, 'clutch');
		close(q('driveline.gearbox_margin').value, (450 * poundFoot) / (1.15 * hand.torque) - 1, 'gearbox');
		for (const [id, rating] of [
			['driveline.clutch_boost_limit', 500],
			['driveline.gearbox_boost_limit', 450],
		] as const) {
			const limit = halving(boost => 1.15 * at(boost).torque - rating * poundFoot, noBoost, mostBoost);
			close(q(id).value, limit, id);
		}
	});
});

describe('boosted, no intercooler, fixed rail, a third of it not known', () => {
	const q = solved(
		sheetOf({
			...engine,
			'engine.firing_order': notKnown,
			'build.altitude': num(1200, 'm'),
			'build.hot_day': num(35, 'degC'),
			'fuel.kind': is('petrol-e10'),
			'fuel.pressure': num(3.8, 'bar'),
			'fuel.reference': is('atmosphere'),
			'injectors.rated_flow': num(42, 'lb/h'),
			'injectors.rated_pressure': num(3, 'bar'),
			'injectors.dead_time': num(0.9, 'ms'),
			'injectors.count': is(8),
			'ignition.gap': num(0.9, 'mm'),
			'ignition.full_load_advance': num(20, 'deg'),
			'boost.kind': is('supercharger'),
			'boost.target': num(0.5, 'bar'),
			'boost.compressor_efficiency': num(62, '%'),
			'boost.intercooler': is('none'),
			'boost.lambda': num(0.82),
		}),
	);
	const at = (boost: number) =>
		byHand({
			...size,
			altitude: 1200,
			hotDay: 308.15,
			boost,
			cooler: null,
			compressor: 0.62,
			lambda: 0.82,
			fuel: e10,
			advance: 20,
		});
	const duty = (boost: number) =>
		dutyOf(at(boost).fuel, 42 * poundHour * Math.sqrt((3.8e5 - boost) / 3e5), 5300, 0.9e-3);

	test('the pressure across falls with boost, and the flow with it', () => {
		close(q('injectors.pressure_across').value, 3.3e5, 'across');
		close(q('injectors.flow').value, 42 * poundHour * Math.sqrt(1.1), 'flow');
		close(q('injectors.duty').value, duty(0.5e5), 'duty');
		close(q('boost.charge_temp').value, at(0.5e5).outlet, 'charge');
		close(q('engine.power').value, at(0.5e5).power, 'power');
		const cycle = 120 / 5300;
		const needed = ((at(0.5e5).fuel * cycle) / 8 / (0.85 * cycle - 0.9e-3)) * Math.sqrt(3 / 3.3);
		close(q('injectors.flow_needed').value, needed, 'needed at rated pressure');
	});

	test('the boost limit is where duty passes 85 %', () => {
		close(
			q('injectors.boost_limit').value,
			halving(boost => duty(boost) - 0.85, 0, 2e5),
			'limit',
		);
	});

	test('what is not known says which answers are missing, all of them', () => {
		expect(q('ignition.companions').missing).toEqual(['engine.firing_order']);
		expect(q('fuel.pump_margin').missing).toEqual(['fuel.pump_flow']);
		expect(q('driveline.gearbox_margin').missing).toEqual(['driveline.gearbox_torque']);
		expect(q('engine.head_clamp_ratio').missing).toEqual(
			['engine.fastener_count', 'engine.gasket_bore', 'engine.head_fasteners', 'engine.fastener_size'].sort(),
		);
		expect(q('harness.days_to_flat').missing).toEqual(['charging.battery_capacity', 'harness.key_off_draw']);
	});
});

describe('unboosted, and a third of it not known', () => {
	const q = solved(
		sheetOf({
			...engine,
			'engine.compression': notKnown,
			'build.altitude': num(500, 'ft'),
			'build.hot_day': num(95, 'degF'),
			'fuel.kind': is('petrol-e10'),
			'fuel.pressure': num(43.5, 'psi'),
			'injectors.rated_flow': num(24, 'lb/h'),
			'boost.kind': is('none'),
			'driveline.gearbox': is('automatic'),
			'driveline.gearbox_torque': num(350, 'lb-ft'),
		}),
	);
	const hand = byHand({
		...size,
		altitude: 500 * foot,
		hotDay: fahrenheit(95),
		boost: null,
		cooler: null,
		compressor: 0.7,
		lambda: 0.87,
		fuel: e10,
		advance: 28,
	});

	test('what can be worked out is, with what was assumed', () => {
		close(q('boost.manifold_pressure').value, hand.ambient, 'manifold');
		close(q('boost.charge_temp').value, fahrenheit(95) + 10, 'charge');
		close(q('engine.air_flow').value, hand.air, 'air');
		close(q('engine.power').value, hand.power, 'power');
		close(q('engine.bmep').value, (120 * hand.power) / (hand.displacement * 5300), 'bmep');
		close(q('fuel.flow').value, hand.fuel, 'fuel');
		expect(q('fuel.flow').assumed).toEqual(['boost.lambda', 'engine.cylinders']);
		close(q('injectors.duty').value, dutyOf(hand.fuel, 24 * poundHour, 5300, 1e-3), 'duty');
		expect(q('injectors.duty').assumed).toEqual([
			'boost.lambda',
			'engine.cylinders',
			'injectors.count',
			'injectors.dead_time',
			'injectors.rated_pressure',
		]);
		close(q('ignition.gas_density_at_spark').value, hand.gas, 'gas');
		close(q('driveline.gearbox_margin').value, (350 * poundFoot) / (1.15 * hand.torque) - 1, 'gearbox');
	});

	test('what cannot says which answers are missing', () => {
		expect(q('engine.compression_spread')).toMatchObject({ value: undefined, missing: ['engine.compression'] });
		expect(q('ignition.required_voltage')).toMatchObject({ value: undefined, missing: ['ignition.gap'] });
	});

	test.each([
		'boost.pressure_ratio',
		'boost.compressor_outlet_temp',
		'boost.compressor_flow_corrected',
		'boost.pipe_velocity',
		'boost.for_power_goal',
		'injectors.boost_limit',
		'fuel.pump_boost_limit',
		'sensors.meter_boost_limit',
		'ignition.boost_limit',
		'engine.knock_boost_limit',
		'engine.head_boost_limit',
		'driveline.clutch_boost_limit',
		'driveline.gearbox_boost_limit',
		'driveline.clutch_capacity',
		'driveline.clutch_margin',
	])('%s does not apply, and lacks nothing', id => {
		expect(q(id)).toMatchObject({ value: null, missing: [] });
	});
});
