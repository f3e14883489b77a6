import type { Circuit, Vocabulary } from '../../plugs/circuit.ts';
import { readRulebook } from '../assets/assets.ts';
import { exit } from '../process/exit.ts';
import { print } from '../process/output.ts';

/** `swap-audit circuits`: every circuit that a plug may carry, by the names that it is known by. */
export function circuits(flags: { readonly json?: boolean }): number {
	const { vocabulary } = readRulebook().rulebook;
	if (flags.json)
		print(
			JSON.stringify(
				vocabulary.circuits.map(circuit => asJson(circuit, vocabulary)),
				null,
				2,
			),
		);
	else print(vocabulary.circuits.map(circuit => inWords(circuit)).join('\n\n'));
	return exit.done;
}

/** A circuit as other programs read it; A, m. */
function asJson(circuit: Circuit, { sorts }: Vocabulary): Record<string, unknown> {
	const { id, title, sort, words, synonyms, ends, direction, when, comfort, shared, twistedWith, load, length, fuse } =
		circuit;
	return {
		id,
		title,
		sort,
		words,
		synonyms,
		ends,
		direction,
		required: when,
		if_missing: { stage: circuit.ifMissing[0], harm: circuit.ifMissing[1] },
		comfort,
		shared,
		twisted_with: twistedWith,
		load,
		length,
		fuse,
		grounded: circuit.grounded,
		fed: circuit.fed,
		crossed: circuit.crossed,
		reads: { ...sorts[sort]?.reads, ...circuit.reads },
	};
}

function inWords({ id, title, sort, words, synonyms, when, comfort }: Circuit): string {
	const need =
		when === null
			? comfort
				? 'comfort only'
				: 'never required'
			: when === 'true'
				? 'always required'
				: `required when ${when}`;
	return [`${id}: ${title} (${sort})`, `  ${words}`, `  ${need}`, `  also: ${synonyms.join(', ')}`].join('\n');
}
