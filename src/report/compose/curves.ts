import type { Assessment } from '../../audit/assess.ts';
import type { Block } from '../document.ts';
import { figures } from '../pictures/figures.ts';

/** The pictures beside the ladder: what moves with boost, the air meter's curve, compression by cylinder. */
export function curves(assessment: Assessment): Block[] {
	return figures(assessment).filter(({ name }) => name !== 'limits');
}
