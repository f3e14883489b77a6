import type { Model } from '../audit/model.ts';
import type { Pass } from '../interview/state.ts';

/** The drawn face. */
export async function drawn(
	_model: Model,
	_argument: string | undefined,
	_pass: Pass,
	_section: string | null,
): Promise<number> {
	throw new Error('not drawn yet');
}
