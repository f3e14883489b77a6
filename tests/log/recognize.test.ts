import { describe, expect, test } from 'vitest';
import { channels, choices, recorded } from '../support/recorded.ts';

type Cells = readonly (number | string)[];

/** A log of ten rows: engine off for four, then running. */
function log(columns: Readonly<Record<string, Cells>>): string {
	const all: Record<string, Cells> = {
		'Time (s)': [0, 1, 2, 3, 4, 5, 6, 7, 8, 9],
		RPM: [0, 0, 0, 0, 800, 900, 2500, 4000, 5500, 3000],
		...columns,
	};
	const rows = Array.from({ length: 10 }, (_, row) => Object.values(all).map(cells => cells[row % cells.length]));
	return [Object.keys(all).join(';'), ...rows.map(row => row.join(';'))].join('\n');
}
const one = async (header: string, cells: Cells, given: string[] = [], not: string[] = []) => {
	const { taken, readings, notes, unused } = await recorded(log({ [header]: cells }), choices(given, not));
	const { time: _, engine_speed: __, ...others } = taken;
	const id = Object.keys(others)[0];
	return { taken: others, first: id === undefined ? undefined : readings[id]![5], notes: notes.join('\n'), unused };
};

describe('channels by header, unit and values', () => {
	// Names and abbreviations of SAE J1979 and J1930, from memory of the standards; conversions by NIST SP 811.
	test.each([
		['Engine coolant temperature (°C)', 80, 'coolant_temp', 353.15],
		['ECT [degF]', 180, 'coolant_temp', 355.37],
		['MAP (kPa)', 95, 'manifold_pressure', 95_000],
		['Intake manifold absolute pressure, psi', 14.5, 'manifold_pressure', 99_974],
		['BARO (inHg)', 29.5, 'ambient_pressure', 99_898],
		['MAF (g/s)', 120, 'air_flow', 0.12],
		['MAF (V)', 3.2, 'meter_volts', 3.2],
		['TPS (V)', 3.2, 'throttle_volts', 3.2],
		['TP (%)', 44, 'throttle', 0.44],
		['APP [%]', 44, 'pedal', 0.44],
		['LONGFT1 (%)', 5, 'trim_long_1', 0.05],
		['Short term fuel trim - bank 2 (%)', -5, 'trim_short_2', -0.05],
		['SPARKADV (deg)', 20, 'spark_advance', 20],
		['Ignition timing advance for #1 cylinder [°]', 20, 'spark_advance', 20],
		['VPWR (V)', 13.8, 'battery_volts', 13.8],
		['Vehicle Speed (mph)', 60, 'road_speed', 26.82],
		['Fuel rail pressure (psi)', 58, 'fuel_pressure', 399_896],
		['Commanded equivalence ratio', 0.9, 'lambda_target', 0.9],
		['Equivalence ratio (lambda)', 0.9, 'lambda_1', 0.9],
		['AFR', 14.7, 'lambda_1', 1],
		['Injector pulse width (ms)', 9, 'injector_pulse', 0.009],
		['EGT (degC)', 700, 'exhaust_temp', 973.15],
		['Engine oil pressure (bar)', 3, 'oil_pressure', 300_000],
	] as const)('%s', async (header, value, id, kept) => {
		const { taken, first } = await one(header, [value]);
		expect(Object.keys(taken)).toEqual([id]);
		expect(first! / kept).toBeCloseTo(1, 3);
	});

	test('a header whose unit or values do not agree is reported, not taken', async () => {
		const unit = await one('Coolant temperature (psi)', [80]);
		expect(unit.taken).toEqual({});
		expect(unit.notes).toMatch(/"psi" is no unit of coolant temperature.*--channel coolant_temp=/);
		const { taken, notes, totals } = await recorded(log({ 'Lambda (lambda)': [99] }));
		expect(taken.lambda_1).toBeUndefined();
		expect(notes.join()).toMatch(/cannot be lambda/);
		expect([...totals.impossible.keys()]).toEqual(['lambda_1']);
	});

	test('a unit that nobody wrote is recognized by the values, or asked for', async () => {
		const fahrenheit = await one('ECT', [60, 120, 180, 190, 195]);
		expect(fahrenheit.taken).toEqual({ coolant_temp: 'ECT|degF|header' });
		expect(fahrenheit.notes).toMatch(/no unit; by its values it is degF/);
		const speed = await one('Vehicle speed', [50]);
		expect(speed.taken).toEqual({});
		expect(speed.notes).toMatch(/can be mph or km\/h or m\/s.*--channel road_speed=Vehicle speed@UNIT/);
		expect((await one('Throttle', [0, 20, 80])).taken).toEqual({ throttle: 'Throttle|%|header' });
		expect((await one('Throttle', [0, 0.2, 0.8])).taken).toEqual({ throttle: 'Throttle|1|header' });
	});

	test('boost near 100 kPa with the engine off is absolute, near 0 gauge; else neither', async () => {
		const absolute = await one('Boost (kPa)', [100, 100, 100, 100, 40, 90, 150, 180, 190, 80]);
		expect(absolute.taken).toEqual({ manifold_pressure: 'Boost (kPa)|kPa abs|header' });
		expect(absolute.notes).toMatch(/by its values it is manifold pressure, absolute/);
		const gauge: Cells = [0.1, 0, 0, 0, -9, 3, 8, 9, 10, 2];
		expect((await one('Boost (psi)', gauge)).taken).toEqual({ boost: 'Boost (psi)|psi|header' });
		expect((await one('MAP (psi)', gauge)).taken).toEqual({ boost: 'MAP (psi)|psi|header' });
		const pull = `Time (s),RPM,Boost (psi)\n${Array.from({ length: 9 }, (_, at) => `${at},${3000 + at},${4 + at}`).join('\n')}`;
		expect((await recorded(pull)).taken.boost).toBeUndefined();
		expect((await recorded(pull, choices(['boost=Boost (psi)']))).taken.boost).toBe('Boost (psi)|psi|given');
	});

	test('lambda and air-fuel ratios', async () => {
		expect((await one('AFR (AFR)', [11.8])).notes).toMatch(/divided by 14\.7/);
		const ethanol = await one('AFR', [9.81], ['lambda_1=AFR@AFR9.81']);
		expect(ethanol).toMatchObject({ taken: { lambda_1: 'AFR|AFR9.81|given' }, first: 1 });
		expect((await one('Equivalence ratio (phi)', [1.25])).first).toBeCloseTo(0.8, 9);
		expect((await one('Lambda', [14.7])).taken).toEqual({ lambda_1: 'Lambda|AFR|header' });
	});

	test('sign of knock retard and zero of trims are reported', async () => {
		const retard = await one('Knock retard (deg)', [0, 0, 0, 0, 0, -2]);
		expect(retard.first).toBe(2);
		expect(retard.notes).toMatch(/negative/);
		expect((await one('LTFT1 (%)', [100, 104, 98, 103, 101, 105])).first).toBeCloseTo(0.05, 9);
		expect((await one('LTFT1', [1, 1.04, 0.98, 1, 1, 1.05])).first).toBeCloseTo(0.05, 9);
		expect((await one('LTFT1', [0, 4, -3, 1, 2, 5])).first).toBeCloseTo(0.05, 9);
	});

	test('words for the loop and the gear', async () => {
		const loop = await recorded(log({ 'Fuel system status': ['OL', 'OL', 'CL', '2', 'OL-Drive'] }));
		expect(loop.readings.loop_closed!.slice(0, 5)).toEqual([0, 0, 1, 1, 0]);
		const gear = await recorded(log({ Gear: ['P', 'R', 'N', 'D1', '2', '3rd'] }));
		expect(gear.readings.gear!.slice(0, 6)).toEqual([0, -1, 0, 1, 2, 3]);
	});

	test('of two candidates the one in the likelier words is taken, and neither of two alike', async () => {
		const header = (letter: string) => `Accelerator pedal position ${letter} (%)`;
		const pedals = await recorded(log({ [header('E')]: [20], [header('D')]: [21] }));
		expect(pedals.taken.pedal).toBe(`${header('D')}|%|header`);
		expect(pedals.unused).toEqual([header('E')]);
		const twins = await recorded(log({ 'MAP (kPa)': [95], 'MAP sensor (kPa)': [96] }));
		expect(twins.taken.manifold_pressure).toBeUndefined();
		expect(twins.notes.join()).toMatch(/can both be manifold pressure.*neither was taken/);
	});

	test('what is given comes first; --not leaves a column alone; what is given wrong is refused', async () => {
		const given = await one('Channel 7', [80], ['coolant_temp=channel 7@degC']);
		expect(given).toMatchObject({ taken: { coolant_temp: 'Channel 7|degC|given' }, first: 353.15 });
		expect((await one('ECT (degC)', [80], [], ['ECT (degC)'])).unused).toEqual(['ECT (degC)']);
		const wrong = (text: string) => expect(one('ECT (degC)', [80], [text])).rejects;
		await wrong('coolant_temp=Nothing').toThrow(/no column "Nothing"/);
		await wrong('heat=ECT (degC)').toThrow(/the channel "heat"; accepted: engine_speed/);
		await wrong('coolant_temp=ECT@psi').toThrow(/the unit "psi" for coolant_temp; accepted: degC/);
	});

	test('what a channel can never read is no reading, and counted', async () => {
		const { readings, totals } = await recorded(log({ 'ECT (degC)': [80, 80, 999] }));
		expect(readings.coolant_temp!.slice(0, 3)).toEqual([353.15, 353.15, Number.NaN]);
		expect(totals.impossible.get('coolant_temp')).toBe(3);
	});
});

describe('time', () => {
	const timed = async (header: string, cells: Cells, given: string[] = []) => {
		const text = [`${header},RPM`, ...cells.map(cell => `${cell},800`)].join('\n');
		const { time, taken } = await recorded(text, choices(given));
		return { time: time.map(at => Number(at.toFixed(6))), unit: taken.time };
	};
	test.each([
		['Time (s)', [5, 5.1, 5.3], 's'],
		['Time (ms)', [5000, 5100, 5300], 'ms'],
		['Time (us)', [5e6, 5.1e6, 5.3e6], 'us'],
		['Time', [5, 5.1, 5.3], 's'],
		['Time', [5000, 5100, 5300], 'ms'],
		['Time', ['10:00:00.000', '10:00:00.100', '10:00:00.300'], 'h:min:s'],
		['Clock', ['59:59.9', '60:00.0', '60:00.2'], 'h:min:s'],
		['Timestamp', ['2024-05-01T10:00:00.0Z', '2024-05-01T10:00:00.1Z', '2024-05-01T10:00:00.3Z'], 'ISO 8601'],
		['whatever', ['23:59:59.900', '00:00:00.000', '00:00:00.200'], 'h:min:s'],
	] as const)('%s %j', async (header, cells, unit) => {
		expect(await timed(header, cells)).toEqual({ time: [0, 0.1, 0.3], unit: `${header}|${unit}|header` });
	});

	test('a clock that is set back goes back', async () => {
		expect((await timed('Time', ['10:00:00', '10:00:01', '09:30:00'])).time).toEqual([0, 1, -1800]);
	});

	test('a count of rows or samples at a given rate', async () => {
		expect((await timed('n', [7, 8, 9], ['time=#@20Hz'])).time).toEqual([0, 0.05, 0.1]);
		expect((await timed('n', [7, 9, 10], ['time=n@20Hz'])).time).toEqual([0, 0.1, 0.15]);
	});

	test('no time at all says what to give', async () => {
		await expect(timed('n', [7, 8, 9])).rejects.toThrow(
			'found no column of time; accepted: --channel time=HEADER@UNIT, or --channel time=#@20Hz',
		);
	});
});

test('every channel is known by the headers of the standards and of the trade', () => {
	expect(channels().length).toBeGreaterThan(30);
	for (const { id, known } of channels()) expect(known.length, id).toBeGreaterThan(3);
});
