import { isFeed, type ReadHalf, type ReadPin } from '../half.ts';
import type { Reading } from '../reading.ts';
import { loadOf } from '../reading.ts';
import { pinWords } from '../remedy.ts';
import { fuseFor, isThin } from '../wire-size.ts';
import { oneEach, type Part, subjectOf } from './part.ts';

type Of = (reading: Reading) => Part[];

/** Each pin of each half; nothing about those that `of` says nothing of. */
const eachPin =
	(of: (pin: ReadPin, half: ReadHalf, reading: Reading) => Pick<Part, 'right' | 'reason'> | null): Of =>
	reading =>
		oneEach(
			reading.halves.flatMap(half =>
				half.pins.flatMap(pin => {
					const found = of(pin, half, reading);
					return found ? [{ name: subjectOf(pin, half, reading.pairs), here: pinWords(pin, half), ...found }] : [];
				}),
			),
		);

/** The wire against the load and length of its circuit. A wire whose size is not stated is not judged. */
export const thin: Of = eachPin(({ area, circuit }, _, { answered }) => {
	if (!circuit || area === null) return null;
	const found = isThin(area, circuit, answered);
	return found === null
		? null
		: { right: !found, ...(found ? { reason: `It carries ${loadOf(circuit, answered)} A.` } : {}) };
});

/** A feed without a fuse near its source. */
export const unfused: Of = eachPin(({ sort, raw }) => {
	if (!isFeed(sort) || raw.fed_here === false || (raw.fused === undefined && raw.fed_here === undefined)) return null;
	return { right: raw.fused === undefined ? undefined : raw.fused !== false };
});

/** A fuse over what the wire behind it bears. */
export const overFused: Of = eachPin(({ raw, area }) => {
	if (typeof raw.fused !== 'number') return null;
	if (area === null) return { right: undefined };
	const bears = fuseFor(area);
	return { right: raw.fused <= bears, reason: `A fuse of ${raw.fused} A; this wire bears ${Math.floor(bears)} A.` };
});

/** The fusible link that is cut off with the old loom. */
export const links: Of = reading =>
	reading.pairs.flatMap(pair =>
		pair.rows.flatMap(({ left, right, met }): Part[] => {
			const linked = [left, right].find(pin => pin?.raw.fused === 'link');
			if (!linked) return [];
			const half = linked === left ? pair.left : pair.right;
			const kept = met.meeting === 'unknown' ? undefined : met.meeting === 'same' || met.meeting === 'moved';
			return [{ name: subjectOf(linked, half, reading.pairs), right: kept, here: pinWords(linked, half) }];
		}),
	);

/** 10 A and up do not go through a small blade (common practice). */
const heavy = 10;
const heavyBlade = 2.8;

/** A wire does not move into a cavity of another size. */
export const terminals: Of = reading => [
	...eachPin(({ raw, circuit }, _, { answered }) => {
		if (raw.terminal === undefined || !circuit) return null;
		const load = loadOf(circuit, answered);
		const small = load !== null && load >= heavy && raw.terminal < heavyBlade;
		return {
			right: !small,
			...(small
				? { reason: `${load} A go through a blade of ${raw.terminal} mm; ${heavy} A and up want ${heavyBlade} mm.` }
				: {}),
		};
	})(reading).filter(({ right }) => right === false),
	...reading.pairs.flatMap(pair =>
		pair.rows.flatMap(({ left, right, pin, toPin, acts }): Part[] => {
			const goes = acts.some(({ side, kind }) => side === 'left' && kind === 'move');
			const target = goes ? pair.right.pins.find(other => other.raw.pin.trim() === toPin) : right;
			const [here, there] = [left?.raw.terminal, target?.raw.terminal];
			if (here === undefined || there === undefined) return [];
			return [
				{
					name: `${pair.left.plug} ${pin}`,
					right: here === there,
					reason: `A terminal of ${here} mm, a cavity of ${there} mm.`,
				},
			];
		}),
	),
];

/** Pairs that have to be twisted. */
export const twisted: Of = eachPin(({ circuit, raw }) =>
	circuit?.twistedWith && raw.twisted !== undefined ? { right: raw.twisted } : null,
);

/** A shield grounded at both ends carries current. */
export const shields: Of = eachPin(({ sort, raw }) =>
	sort === 'shield' && raw.grounded_at !== undefined
		? { right: raw.grounded_at === 'both' ? false : raw.grounded_at === 'none' ? undefined : true }
		: null,
);

/** Degrees Celsius by class: ISO 6722 A to D, SAE J1128 GPT, HDT, GXL, SXL, TXL (from memory). */
const bears: Readonly<Record<string, number>> = {
	A: 85,
	B: 100,
	C: 125,
	D: 150,
	GPT: 80,
	HDT: 80,
	GXL: 125,
	SXL: 125,
	TXL: 125,
};

/** Insulation near the exhaust. */
export const insulation: Of = eachPin(({ raw }, _, { answered }) => {
	if (raw.class === undefined) return null;
	const routing = answered('harness.routing');
	if (!Array.isArray(routing)) return routing === undefined ? { right: undefined } : null;
	if (!routing.includes('near-exhaust')) return null;
	return { right: bears[raw.class]! >= 125, reason: `Its insulation bears ${bears[raw.class]} degC.` };
});
