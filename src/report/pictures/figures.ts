import type { Assessment } from '../../audit/assess.ts';
import type { Block } from '../document.ts';
import { drawCompression } from './compression.ts';
import { drawLadder } from './ladder.ts';
import { drawMeter } from './meter.ts';
import { drawOverBoost } from './over-boost.ts';

const drawn = [
	{ name: 'limits', title: 'What gives out first', draw: drawLadder },
	{ name: 'over-boost', title: 'What moves with boost', draw: drawOverBoost },
	{ name: 'air-meter', title: 'Air meter', draw: drawMeter },
	{ name: 'compression', title: 'Compression by cylinder', draw: drawCompression },
] as const;

/** The pictures of an audit that have data. */
export function figures(assessment: Assessment): Extract<Block, { is: 'figure' }>[] {
	return drawn.flatMap(({ name, title, draw }) => {
		const svg = draw(assessment);
		return svg === null ? [] : [{ is: 'figure', name, title, svg } as const];
	});
}
