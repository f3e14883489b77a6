import { candidatesFor } from '../candidates.ts';
import type { ReadHalf, ReadPin } from '../half.ts';
import type { Reading } from '../reading.ts';
import { pinWords } from '../remedy.ts';
import { oneEach, orRight, type Part, subjectOf } from './part.ts';

type Of = (reading: Reading) => Part[];

/** Each half by itself. */
const eachHalf =
	(of: (half: ReadHalf, reading: Reading) => Part[]): Of =>
	reading =>
		oneEach(reading.halves.flatMap(half => orRight(of(half, reading), half.plug)));

/** Two lines of one pin. */
export const twicePins: Of = eachHalf((half, { pairs }) => {
	const seen = new Map<string, ReadPin[]>();
	for (const pin of half.pins) seen.set(pin.pin, [...(seen.get(pin.pin) ?? []), pin]);
	return [...seen.values()]
		.filter(({ length }) => length > 1)
		.map(([first, ...others]) => ({
			name: subjectOf(first!, half, pairs),
			right: false,
			here: pinWords(first!, half),
			there: others.map(pin => pinWords(pin, half)).join('; '),
		}));
});

/** A circuit at two pins of one half that may stand at one alone. */
export const twiceCircuits: Of = eachHalf(half => {
	const seen = new Map<string, Set<string>>();
	for (const { circuit, pin } of half.pins)
		if (circuit && !circuit.shared) seen.set(circuit.id, (seen.get(circuit.id) ?? new Set()).add(pin));
	return [...seen]
		.filter(([, pins]) => pins.size > 1)
		.map(([id, pins]) => ({
			name: id,
			right: false,
			here: `pins ${[...pins].join(' and ')} of the ${half.half}'s half`,
		}));
});

/** A pin whose words are not taken for a circuit; blank ones are not known. */
export const recognized: Of = eachHalf((half, { pairs, vocabulary }) => {
	const titles = new Map(vocabulary.circuits.map(({ id, title }) => [id, title]));
	return half.pins.flatMap((pin): Part[] => {
		const { is } = pin.recognized;
		const name = subjectOf(pin, half, pairs);
		if (is === 'blank') return [{ name, right: undefined, here: pinWords(pin, half) }];
		if (is !== 'strange' && is !== 'unclear') return [];
		if (pin.raw.sort !== undefined) return [{ name, right: true }];
		const near = candidatesFor(vocabulary, pin.raw.circuit ?? '').map(id => titles.get(id)!);
		const reason = is === 'unclear' ? 'It could be more than one' : 'Nearest';
		return [
			{
				name,
				right: false,
				here: pinWords(pin, half),
				...(near.length > 0 ? { reason: `${reason}: ${near.join(', ')}.` } : {}),
			},
		];
	});
});

/** A shell that was forced together, or that nobody tried. */
export const shells: Of = ({ halves }) =>
	oneEach(
		halves.flatMap(({ plug, raw }): Part[] =>
			raw.keyed === undefined
				? []
				: [{ name: plug, right: raw.keyed === 'not-tried' ? undefined : raw.keyed === 'mates' }],
		),
	);

/** The lock that keeps the halves together. */
export const locks: Of = ({ halves }) =>
	oneEach(
		halves.flatMap(({ plug, raw }): Part[] =>
			raw.lock === undefined ? [] : [{ name: plug, right: raw.lock === 'holds' }],
		),
	);

/** Cavities of a plug outside the cabin without a seal or a cavity plug. */
export const seals: Of = ({ halves, pairs }) =>
	oneEach(
		halves
			.filter(({ raw }) => raw.outside === true)
			.flatMap(half =>
				half.pins.flatMap((pin): Part[] =>
					pin.raw.seal === undefined
						? []
						: [{ name: subjectOf(pin, half, pairs), right: pin.raw.seal, here: pinWords(pin, half) }],
				),
			),
	);

/** What hangs in one splice. */
export const splices: Of = ({ halves }) => {
	const joined = new Map<string, ReadPin[]>();
	for (const { pins } of halves)
		for (const pin of pins) {
			const name = pin.raw.splice?.trim();
			if (name) joined.set(name, [...(joined.get(name) ?? []), pin]);
		}
	return [...joined].map(([name, pins]) => splice(name, pins));
};

const drivers: readonly string[] = ['low-driver', 'high-driver', 'coil-driver', 'motor'];

function splice(name: string, pins: readonly ReadPin[]): Part {
	const sorts = new Set<string>(pins.map(({ sort }) => sort));
	const feed = sorts.has('battery') || sorts.has('switched');
	const ground = sorts.has('power-ground') || sorts.has('signal-ground');
	const driven = new Set(
		pins.filter(({ sort }) => drivers.includes(sort)).map(({ circuit, raw }) => circuit?.id ?? raw.circuit),
	);
	const reasons = [
		...(sorts.has('reference-5v') && feed
			? ['A 5 V reference and a feed are in one splice: 12 V on every sensor.']
			: []),
		...(feed && ground ? ['A feed and a ground are in one splice: a dead short.'] : []),
		...(driven.size > 1 ? ['Two drivers are in one splice: each works the load of the other.'] : []),
		...(sorts.has('signal-ground') && sorts.has('power-ground')
			? ["A sensor return and a power ground are in one splice: every sensor shifts with the engine's current."]
			: []),
	];
	const right = reasons.length > 0 ? false : sorts.has('unknown') ? undefined : true;
	return {
		name,
		right,
		...(reasons.length > 0 ? { reason: reasons.join(' ') } : {}),
		here: pins.map(({ raw }) => `pin ${raw.pin.trim()}`).join(', '),
	};
}
