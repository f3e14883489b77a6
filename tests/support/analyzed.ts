import type { Analysis } from '../../src/log/analysis.ts';
import { Analyzer } from '../../src/log/analyze.ts';
import type { Car } from '../../src/log/car.ts';
import { declared } from './declared.ts';
import { channels } from './recorded.ts';
import type { Drive } from './simulated-drive.ts';

/** A car of which nothing is known. */
export const unknownCar: Car = { value: () => undefined, at: () => undefined };

/** A drive judged, as it would come in blocks of so many rows. */
export function analyzed(
	{ time, channels: columns }: Pick<Drive, 'time' | 'channels'>,
	car: Car = unknownCar,
	{ rows = 1000, most }: { readonly rows?: number; readonly most?: number } = {},
): Analysis {
	const analyzer = new Analyzer(car, declared(), channels(), most);
	for (let at = 0; at < time.length; at += rows)
		analyzer.push({
			time: time.slice(at, at + rows),
			channels: new Map([...columns].map(([id, column]) => [id, column.slice(at, at + rows)])),
		});
	return analyzer.finish();
}
