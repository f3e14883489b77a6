import type { Assessment } from '../../audit/assess.ts';
import type { Figure } from '../document.ts';
import { drawCompression } from './compression.ts';
import { drawLadder } from './ladder.ts';
import { drawMeter } from './meter.ts';
import { drawOverBoost } from './over-boost.ts';

const drawn = {
	limits: drawLadder,
	'over-boost': drawOverBoost,
	'air-meter': drawMeter,
	compression: drawCompression,
} as const;

/** Pictures of an audit by name; one without data is left out. */
export function figures(assessment: Assessment, names: readonly (keyof typeof drawn)[]): Figure[] {
	return names.flatMap(name => {
		const picture = drawn[name](assessment);
		return picture === null ? [] : [{ is: 'figure', name, ...picture } as const];
	});
}
