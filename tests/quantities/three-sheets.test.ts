import { describe, expect, test } from 'vitest';
import { assess } from '../../src/audit/assess.ts';
import { checkSheet } from '../../src/sheet/check.ts';
import { testModel } from '../support/model.ts';

// Three sheets written by hand, and every figure of the core chain worked out again here, by plain arithmetic from the
// definitions: nothing of the physics room is used. Two roads to one figure, within 0.1 %.

type Given = Record<string, Record<string, unknown>>;
const num = (value: number, unit?: string) => ({ value, ...(unit ? { unit } : {}), known: 'measured' });

function quantitiesOf(answers: Given): Record<string, { value: number; missing: string[]; assumed: string[] }> {
	const model = testModel();
	const sheet = checkSheet(
		{ format: 'swap-audit/sheet', version: 1, name: 'by hand', units: 'us', answers, audits: [] },
		model.rulebook.questions,
	);
	return assess(model, sheet, { date: '2026-05-01', units: 'us', tool: 'test', draws: 0 }).audit.quantities as never;
}

const psi = 4.4482216152605 / 0.0254 ** 2;
const inch = 0.0254;
const poundHour = 0.45359237 / 3600;
const celsius = (fahrenheit: number) => ((fahrenheit - 32) * 5) / 9 + 273.15;

/** Volume over the piston in swept volumes, by the triangle of crank and rod solved with the law of cosines. */
function volume(angle: number, stroke: number, rod: number, ratio: number): number {
	const crank = stroke / 2;
	const b = -2 * crank * Math.cos((angle * Math.PI) / 180);
	const pin = (-b + Math.sqrt(b * b - 4 * (crank * crank - rod * rod))) / 2;
	return (crank + rod - pin) / stroke + 1 / (ratio - 1);
}

interface Engine {
	readonly bore: number;
	readonly stroke: number;
	readonly rod: number;
	readonly ratio: number;
	readonly closes: number;
	readonly rpm: number;
	readonly redline: number;
	readonly filling: number;
	readonly altitude: number;
	readonly hot: number;
	readonly boost: number;
	readonly boosted: boolean;
	readonly cooler: { readonly effectiveness: number; readonly loss: number } | null;
	readonly efficiency: number;
	readonly lambda: number;
	readonly fuel: { readonly afr: number; readonly heat: number };
	readonly advance: number;
}

function byHand(e: Engine) {
	const h = (6356766 * e.altitude) / (6356766 + e.altitude);
	const ambient = 101325 * (1 - (0.0065 * h) / 288.15) ** 5.255876;
	const manifold = e.boosted ? ambient + e.boost : ambient;
	const ratio = (manifold + (e.cooler?.loss ?? 0)) / (ambient - 1000);
	const outlet = e.hot * (1 + (ratio ** (0.4 / 1.4) - 1) / e.efficiency);
	const charge = !e.boosted ? e.hot + 10 : e.cooler ? outlet - e.cooler.effectiveness * (outlet - e.hot) : outlet;
	const density = manifold / (287.05 * charge);
	const displacement = (8 * Math.PI * e.bore ** 2 * e.stroke) / 4;
	const air = (e.filling * density * displacement * e.rpm) / 120;
	const power = (air / e.fuel.afr) * e.fuel.heat * (e.boosted ? 0.2838 : 0.3133);
	const fuel = air / (e.lambda * e.fuel.afr);
	const gas =
		(manifold / 101325) *
		(293 / charge) *
		(volume(180 - e.closes, e.stroke, e.rod, e.ratio) / volume(e.advance, e.stroke, e.rod, e.ratio));
	const effective = volume(180 - e.closes, e.stroke, e.rod, e.ratio) / volume(0, e.stroke, e.rod, e.ratio);
	return { ambient, manifold, ratio, outlet, charge, density, displacement, air, power, fuel, gas, effective };
}

const close = (found: number | null | undefined, wanted: number, what: string) => {
	expect(found, what).not.toBeNull();
	expect(Math.abs(Number(found) / wanted - 1), `${what}: ${found} for ${wanted}`).toBeLessThan(1e-3);
};

const engine = {
	bore: num(4, 'in'),
	stroke: num(3.25, 'in'),
	rod: num(5.9, 'in'),
	compression_ratio: num(9.2, ':1'),
	intake_closes: num(58, 'deg'),
	peak_rpm: num(5300, 'rpm'),
	redline: num(5900, 'rpm'),
	volumetric_efficiency: num(86, '%'),
	firing_order: { value: [1, 8, 4, 3, 6, 5, 7, 2] },
	compression: { value: [150, 152, null, 149, 120, 151, 150, 148], unit: 'psi', known: 'measured' },
};

const petrol = { afr: 14.7, heat: 43.44e6 };
const e10 = { afr: 14.1, heat: 41.7e6 };

describe('boosted, intercooled, manifold reference', () => {
	const q = quantitiesOf({
		build: { altitude: num(650, 'ft'), hot_day: num(90, 'degF'), humidity: num(40, '%') },
		engine,
		fuel: {
			kind: { value: 'petrol' },
			pressure: num(43.5, 'psi'),
			reference: { value: 'manifold' },
			pump_current: num(11, 'A'),
			pump_wire_gauge: num(12, 'AWG'),
			pump_wire_length: num(14, 'ft'),
		},
		injectors: { rated_flow: num(60, 'lb/h'), dead_time: num(1, 'ms') },
		ignition: { gap: num(0.03, 'in'), full_load_advance: num(17, 'deg') },
		boost: {
			kind: { value: 'turbocharger' },
			target: num(11, 'psi'),
			compressor_efficiency: num(71, '%'),
			intercooler: { value: 'air-to-air' },
			intercooler_effectiveness: num(66, '%'),
			intercooler_loss: num(1.2, 'psi'),
			lambda: num(0.8),
			pipe_bore: num(2.5, 'in'),
		},
		driveline: { gearbox: { value: 'manual' }, gearbox_torque: num(450, 'lb-ft'), clutch_torque: num(500, 'lb-ft') },
		harness: { key_off_draw: num(85, 'mA') },
		charging: { battery_capacity: num(62, 'Ah') },
	});
	const hand = byHand({
		bore: 4 * inch,
		stroke: 3.25 * inch,
		rod: 5.9 * inch,
		ratio: 9.2,
		closes: 58,
		rpm: 5300,
		redline: 5900,
		filling: 0.86,
		altitude: 650 * 0.3048,
		hot: celsius(90),
		boost: 11 * psi,
		boosted: true,
		cooler: { effectiveness: 0.66, loss: 1.2 * psi },
		efficiency: 0.71,
		lambda: 0.8,
		fuel: petrol,
		advance: 17,
	});

	test('air, boost and power', () => {
		close(q['air.ambient_pressure']?.value, hand.ambient, 'ambient');
		close(q['boost.manifold_pressure']?.value, hand.manifold, 'manifold');
		close(q['boost.pressure_ratio']?.value, hand.ratio, 'pressure ratio');
		close(q['boost.compressor_outlet_temp']?.value, hand.outlet, 'outlet');
		close(q['boost.charge_temp']?.value, hand.charge, 'charge');
		close(q['boost.density_ratio']?.value, hand.density / (hand.ambient / (287.05 * celsius(90))), 'density ratio');
		close(q['engine.displacement']?.value, hand.displacement, 'displacement');
		close(q['engine.air_flow']?.value, hand.air, 'air');
		close(q['engine.power']?.value, hand.power, 'power');
		close(q['engine.torque']?.value, (hand.power * 60) / (2 * Math.PI * 5300), 'torque');
		close(q['engine.bmep']?.value, (120 * hand.power) / (hand.displacement * 5300), 'bmep');
		close(q['engine.mean_piston_speed']?.value, (2 * 3.25 * inch * 5900) / 60, 'piston speed');
		close(
			q['boost.compressor_flow_corrected']?.value,
			(hand.air * Math.sqrt(celsius(90) / 298.15)) / ((hand.ambient - 1000) / 1e5),
			'corrected flow',
		);
		close(q['boost.pipe_velocity']?.value, hand.air / (hand.density * Math.PI * (1.25 * inch) ** 2), 'pipe velocity');
	});

	test('fuel and injectors; the limit is where duty is the limit', () => {
		close(q['fuel.flow']?.value, hand.fuel, 'fuel');
		close(q['injectors.pressure_across']?.value, 43.5 * psi, 'across');
		close(q['injectors.flow']?.value, 60 * poundHour, 'flow');
		const pulse = (hand.fuel * (120 / 5300)) / 8 / (60 * poundHour) + 1e-3;
		close(q['injectors.pulse_width']?.value, pulse, 'pulse');
		close(q['injectors.duty']?.value, (pulse * 5300) / 120, 'duty');
		close(q['injectors.flow_needed']?.value, (hand.fuel * (120 / 5300)) / 8 / (0.85 * (120 / 5300) - 1e-3), 'needed');
	});

	test('spark', () => {
		close(q['ignition.gas_density_at_spark']?.value, hand.gas, 'gas');
		const x = hand.gas * 0.03 * 2.54;
		const volts = 1000 * (24.22 * x + 6.08 * Math.sqrt(x));
		close(q['ignition.required_voltage']?.value, volts, 'required');
		close(q['ignition.spark_margin']?.value, 27500 / volts - 1, 'margin');
		expect(q['ignition.companions']?.value).toEqual([
			[1, 6],
			[8, 5],
			[4, 7],
			[3, 2],
		]);
		// At the widest gap the same formula gives the capacity.
		const widest = hand.gas * Number(q['ignition.gap_limit']?.value) * 100;
		close(1000 * (24.22 * widest + 6.08 * Math.sqrt(widest)), 27500, 'gap limit');
	});

	test('compression, wire, battery, clutch and gearbox', () => {
		close(q['engine.effective_compression_ratio']?.value, hand.effective, 'effective ratio');
		close(
			q['engine.cranking_pressure_expected']?.value,
			hand.ambient * hand.effective ** 1.25 - hand.ambient,
			'cranking',
		);
		close(q['engine.compression_spread']?.value, 120 / 152, 'spread');
		const area = (Math.PI / 4) * (0.127e-3 * 92 ** ((36 - 12) / 39)) ** 2;
		close(q['fuel.pump_wire_drop']?.value, (11 * 2 * 14 * 0.3048 * (1e-6 / 58)) / area, 'drop');
		close(q['harness.days_to_flat']?.value, 31 / 0.085 / 24, 'days');
		const torque = (hand.power * 60) / (2 * Math.PI * 5300);
		close(q['driveline.clutch_margin']?.value, (500 * 1.3558179483) / torque - 1, 'clutch');
		close(q['driveline.gearbox_margin']?.value, (450 * 1.3558179483) / torque - 1, 'gearbox');
	});
});

describe('boosted, no intercooler, fixed rail', () => {
	const answers = {
		build: { altitude: num(1200, 'm'), hot_day: num(35, 'degC') },
		engine,
		fuel: { kind: { value: 'petrol-e10' }, pressure: num(3.8, 'bar'), reference: { value: 'atmosphere' } },
		injectors: {
			rated_flow: num(42, 'lb/h'),
			rated_pressure: num(3, 'bar'),
			dead_time: num(0.9, 'ms'),
			count: { value: 8 },
		},
		ignition: { gap: num(0.9, 'mm'), full_load_advance: num(20, 'deg') },
		boost: {
			kind: { value: 'supercharger' },
			target: num(0.5, 'bar'),
			compressor_efficiency: num(62, '%'),
			intercooler: { value: 'none' },
			lambda: num(0.82),
		},
	};
	const q = quantitiesOf(answers);
	const at = (boost: number) =>
		byHand({
			bore: 4 * inch,
			stroke: 3.25 * inch,
			rod: 5.9 * inch,
			ratio: 9.2,
			closes: 58,
			rpm: 5300,
			redline: 5900,
			filling: 0.86,
			altitude: 1200,
			hot: 308.15,
			boost,
			boosted: true,
			cooler: null,
			efficiency: 0.62,
			lambda: 0.82,
			fuel: e10,
			advance: 20,
		});
	const dutyAt = (boost: number) => {
		const flow = 42 * poundHour * Math.sqrt((3.8e5 - boost) / 3e5);
		return ((at(boost).fuel * (120 / 5300)) / 8 / flow + 0.9e-3) / (120 / 5300);
	};

	test('the pressure across falls with boost, and the duty with it', () => {
		close(q['injectors.pressure_across']?.value, 3.3e5, 'across');
		close(q['injectors.duty']?.value, dutyAt(0.5e5), 'duty');
		close(q['boost.charge_temp']?.value, at(0.5e5).charge, 'charge');
		close(q['engine.power']?.value, at(0.5e5).power, 'power');
	});

	test('the boost limit agrees with stepping boost up by hand', () => {
		let boost = 0;
		while (dutyAt(boost) < 0.85) boost += 10;
		close(q['injectors.boost_limit']?.value, boost, 'limit');
	});
});

describe('unboosted, and a third of it not known', () => {
	const q = quantitiesOf({
		build: { altitude: num(500, 'ft'), hot_day: num(95, 'degF') },
		engine: { ...engine, compression: { known: 'not-known' } },
		fuel: { kind: { value: 'petrol-e10' }, pressure: num(43.5, 'psi') },
		injectors: { rated_flow: num(24, 'lb/h') },
		boost: { kind: { value: 'none' } },
		driveline: { gearbox: { value: 'automatic' }, gearbox_torque: num(350, 'lb-ft') },
	});
	const hand = byHand({
		bore: 4 * inch,
		stroke: 3.25 * inch,
		rod: 5.9 * inch,
		ratio: 9.2,
		closes: 58,
		rpm: 5300,
		redline: 5900,
		filling: 0.86,
		altitude: 500 * 0.3048,
		hot: celsius(95),
		boost: 0,
		boosted: false,
		cooler: null,
		efficiency: 0.7,
		lambda: 0.87,
		fuel: e10,
		advance: 28,
	});

	test('what can be worked out is, with what was assumed', () => {
		close(q['engine.power']?.value, hand.power, 'power');
		close(q['fuel.flow']?.value, hand.fuel, 'fuel');
		expect(q['fuel.flow']?.assumed).toContain('boost.lambda');
		const pulse = (hand.fuel * (120 / 5300)) / 8 / (24 * poundHour) + 1e-3;
		close(q['injectors.duty']?.value, (pulse * 5300) / 120, 'duty');
		expect(q['injectors.duty']?.assumed).toEqual(
			expect.arrayContaining(['injectors.dead_time', 'injectors.count', 'injectors.rated_pressure']),
		);
	});

	test('what cannot says which answers are missing; what does not apply says nothing', () => {
		expect(q['engine.compression_spread']).toMatchObject({ value: null, missing: ['engine.compression'] });
		expect(q['ignition.required_voltage']).toMatchObject({ value: null, missing: ['ignition.gap'] });
		expect(q['injectors.boost_limit']).toMatchObject({ value: null, missing: [] });
		expect(q['driveline.clutch_margin']).toMatchObject({ value: null, missing: [] });
	});
});
