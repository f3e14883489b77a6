import type { Check, Part } from './part.ts';

/** A circuit that the engine needs, on one half alone or on neither. */
export const through: Check = reading => {
	const misread = reading.pairs.some(pair => pair.mirrored);
	const judged = reading.through.filter(({ is }) => is !== 'unknown');
	const parts = judged.map(
		({ circuit, is, why, lacks }): Part => ({
			name: circuit.id,
			right: is === 'through' ? true : misread ? undefined : false,
			here: circuit.title,
			...(why ? { reason: why } : {}),
			missing: lacks,
			stage: circuit.ifMissing[0],
			harm: circuit.ifMissing[1],
		}),
	);
	return [
		...parts,
		...reading.alone.map(({ plug }): Part => ({ name: plug, right: undefined, reason: 'One half is not given.' })),
	];
};

/** A circuit that the engine needs, or may need, and that may be where nobody has looked. */
export const unseen: Check = ({ through, halves }) => {
	const parts = through
		.filter(({ is }) => is === 'unknown')
		.map(
			({ circuit, why, lacks }): Part => ({
				name: circuit.id,
				right: undefined,
				here: circuit.title,
				reason: why,
				missing: lacks,
			}),
		);
	return parts.length > 0 ? parts : [{ name: halves[0]!.plug, right: true }];
};
