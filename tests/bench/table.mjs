import { closeSync, openSync, writeSync } from 'node:fs';

const header =
	'Time (s),Engine RPM (rpm),Throttle Position (%),MAP (kPa),MAF (g/s),ECT (degC),IAT (degC),Lambda,Injector Pulse Width (ms),Battery Voltage (V),Spark Advance (deg),Vehicle Speed (km/h)';

/** Writes a table of 12 channels of an invented drive, so many megabytes long. */
export function writeTable(path, megabytes) {
	const file = openSync(path, 'w');
	let written = writeSync(file, `${header}\n`);
	let seed = 1;
	const noise = () => (seed = (seed * 48271) % 2147483647) / 2147483647;
	for (let row = 0; written < megabytes * 1e6; ) {
		const lines = [];
		for (const stop = row + 5000; row < stop; row++) {
			const wave = Math.sin(row / 500);
			const cells = [
				(row * 0.05).toFixed(3),
				(2500 + 1800 * wave + 20 * noise()).toFixed(0),
				(50 + 45 * wave + noise()).toFixed(1),
				(95 + 60 * wave + noise()).toFixed(1),
				(80 + 70 * wave + noise()).toFixed(2),
				(88 + noise()).toFixed(1),
				(30 + 8 * noise()).toFixed(1),
				(0.95 + 0.1 * noise()).toFixed(3),
				(8 + 6 * wave + noise()).toFixed(3),
				(13.8 + 0.3 * noise()).toFixed(2),
				(20 - 8 * wave + noise()).toFixed(1),
				(60 + 40 * wave + noise()).toFixed(1),
			];
			lines.push(cells.join(','));
		}
		written += writeSync(file, `${lines.join('\n')}\n`);
	}
	closeSync(file);
}
