import { type Drive, simulateDrive } from './simulated-drive.ts';

const psi = 6894.757;
const air = 99_500;

/**
 * The invented drive of the demo pickup, as demo/after-changes.log.csv has it: two pulls that run out of injector on a rail
 * that does not follow boost, and go lean for it. The simulator's car is not the pickup: the rail is the pickup's 40 psi over
 * the air outside, and the pulse what its engine of 5.12 l on injectors of 36 lb/h (the simulator's: 5.35 l, 60 lb/h at
 * 43.5 psi) needs at that.
 */
export function demoLog(): string {
	const drive = simulateDrive({
		seed: 8,
		rate: 10,
		pulls: 2,
		cruise: 10,
		faults: { overTarget: 2 * psi, leanOnTop: 0.06, advance: 2 },
	});
	const of = (id: string, row: number) => drive.channels.get(id)![row]!;
	const boostAt = (row: number) => (of('manifold_pressure', row) - air) / psi;
	const railAt = (row: number) => 40 * Math.min(1, drive.time[row]! / 0.3) - 0.08 * Math.max(0, boostAt(row));
	const pulseAt = (row: number) => {
		const open = Math.max(0, of('injector_pulse', row) - 0.001) * (5.12 / 5.35) * (60 / 36);
		return open === 0 ? 0 : 1 + 1000 * open * Math.sqrt(43.5 / (railAt(row) - boostAt(row)));
	};
	const fahrenheit = (kelvin: number) => (kelvin - 273.15) * 1.8 + 32;
	const columns: readonly (readonly [header: string, digits: number, cell: (row: number) => number])[] = [
		['Time (s)', 1, row => drive.time[row]!],
		['Engine RPM', 0, row => of('engine_speed', row)],
		['Pedal (%)', 1, row => 100 * of('pedal', row)],
		['Boost (psi)', 1, boostAt],
		['Charge Temp (degF)', 0, row => fahrenheit(of('charge_temp', row))],
		['Coolant Temp (degF)', 0, row => fahrenheit(of('coolant_temp', row))],
		['Wideband Lambda', 2, row => of('lambda_1', row)],
		['Injector Pulse Width (ms)', 2, pulseAt],
		['Fuel Pressure (psi)', 1, railAt],
		['Battery (V)', 1, row => of('battery_volts', row)],
		['Spark Advance (deg)', 1, row => of('spark_advance', row)],
		['Knock Retard (deg)', 1, row => of('knock_retard', row)],
	];
	return [
		'# Invented for the demo: no engine made these numbers.',
		columns.map(([header]) => header).join(','),
		...rowsOf(drive).map(row => columns.map(([, digits, cell]) => cell(row).toFixed(digits)).join(',')),
		'',
	].join('\n');
}

const rowsOf = ({ time }: Drive): number[] => [...time.keys()];
