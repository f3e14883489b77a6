import { meetingWords } from '../circuit.ts';
import { isFeed, type ReadPin } from '../half.ts';
import type { Reading, ReadPair } from '../reading.ts';
import { pinWords, remedy, type Sizes } from '../remedy.ts';
import type { Row } from '../rows.ts';
import { type Check, orRight, type Part, pinSubject } from './part.ts';

/** A half without its other one: nothing of it can be decided. */
const withoutOther = ({ alone }: Reading): Part[] =>
	alone.map(({ plug, half }) => ({
		name: plug,
		right: undefined,
		reason: `The half that the ${half}'s half meets is not given.`,
	}));

/** Each pair by pin, each half without its other one as something that cannot be decided. */
const eachPair =
	(of: (pair: ReadPair, reading: Reading, sizes: Sizes) => Part[]): Check =>
	(reading, sizes) => [
		...reading.pairs.flatMap(pair =>
			of(pair, reading, sizes).map(part =>
				pair.mirrored && part.right === false ? { ...part, right: undefined } : part,
			),
		),
		...withoutOther(reading),
	];

const subject = ({ pair, pin }: Row): string => pinSubject(pair.left.plug, pin);

const about = (row: Row, { answered }: Reading, sizes: Sizes) => ({
	here: pinWords(row.left, row.pair.left),
	there: pinWords(row.right, row.pair.right),
	remedy: remedy(row, answered, sizes),
});

/** What meets at each pin; `meeting` is left out where it is not known. */
export const meetings: Check = (reading, sizes) => [
	...reading.pairs
		.filter(({ by }) => by === 'pin')
		.flatMap(pair =>
			worstRows(pair.rows).map((row): Part => {
				const { meeting, why, harm, stage, ifLive } = row.met;
				const known = meeting !== 'unknown' && !pair.mirrored;
				return {
					name: subject(row),
					right: known ? meeting !== 'burns' && meeting !== 'kills' && meeting !== 'wrong' : undefined,
					...(known ? { meeting } : {}),
					...about(row, reading, sizes),
					reason: [why, ifLive ? 'This is so if either wire is live.' : ''].filter(Boolean).join(' '),
					stage,
					harm,
				};
			}),
		),
	...withoutOther(reading),
];

/** A pin that is listed twice has one line: the worst. */
function worstRows(rows: readonly Row[]): Row[] {
	const found = new Map<string, Row>();
	for (const row of rows) {
		const before = found.get(subject(row));
		if (!before || meetingWords.indexOf(row.met.meeting) < meetingWords.indexOf(before.met.meeting))
			found.set(subject(row), row);
	}
	return [...found.values()];
}

/** The same circuit at another pin. */
export const moved: Check = eachPair((pair, reading, sizes) =>
	orRight(
		pair.rows
			.filter(
				({ acts, left }) =>
					left?.circuit &&
					acts.some(({ kind }) => kind === 'move') &&
					pair.right.pins.some(({ circuit }) => circuit === left.circuit),
			)
			.map(row => ({
				name: row.left!.circuit!.id,
				right: false,
				here: `pin ${row.left!.raw.pin.trim()} of the ${pair.left.half}'s half`,
				there: `pin ${row.toPin} of the ${pair.right.half}'s half`,
				remedy: remedy(row, reading.answered, sizes),
			})),
		pair.left.plug,
	),
);

/** A live wire whose other half has nothing. */
export const openEnds: Check = eachPair((pair, reading, sizes) =>
	pair.by === 'circuit'
		? []
		: orRight(
				pair.rows.flatMap(row => {
					const ends = [
						[row.left, row.right, row.acts.some(({ side, kind }) => side === 'left' && kind === 'move')],
						[row.right, row.left, row.acts.some(({ side, kind }) => side === 'right' && kind === 'takes')],
					] as const;
					return ends.flatMap(([feed, other, goes]): Part[] => {
						if (!feed || !isFeed(feed.sort) || feed.raw.fed_here === false) return [];
						const open = other === null || other.sort === 'unknown' ? undefined : other.sort === 'empty' && !goes;
						const spare = other?.recognized.is === 'spare';
						return [
							{
								name: subject(row),
								right: open === undefined ? undefined : !open,
								...about(row, reading, sizes),
								reason: spare
									? 'It makes the bare far end of the spare wire live.'
									: 'Nothing takes it on the other half: a live loose end.',
							},
						];
					});
				}),
				pair.left.plug,
			),
);

/** The same color, another circuit: colors lie between years. */
export const colors: Check = eachPair((pair, reading, sizes) =>
	pair.by === 'circuit'
		? []
		: orRight(
				pair.rows
					.filter(
						({ left, right }) =>
							left?.circuit &&
							right?.circuit &&
							left.circuit !== right.circuit &&
							left.color !== null &&
							left.color === right.color,
					)
					.map(row => ({ name: subject(row), right: false, ...about(row, reading, sizes) })),
				pair.left.plug,
			),
);

/** Plus on minus of one pair; the subject is its plus. */
export const swapped: Check = eachPair((pair, reading, sizes) => {
	const parts = pair.rows.flatMap((row): Part[] => {
		const [a, b] = [row.left?.circuit, row.right?.circuit];
		if (!a?.twistedWith || !b) return [];
		const plus = [a, b].find(({ id }) => id.endsWith('-plus'))?.id ?? a.id;
		if (a === b) return a.id === plus ? [{ name: plus, right: true }] : [];
		return a.twistedWith === b.id ? [{ name: plus, right: false, ...about(row, reading, sizes) }] : [];
	});
	return orRight(parts, pair.left.plug);
});

/** The sensors' return on a ground that carries current. */
export const returns: Check = eachPair((pair, reading, sizes) =>
	pair.by === 'circuit'
		? []
		: orRight(
				pair.rows.flatMap(row => {
					const sorts = [row.left, row.right].map((pin: ReadPin | null) => pin?.sort);
					if (!sorts.includes('signal-ground')) return [];
					const right = sorts.includes('power-ground')
						? false
						: sorts.includes(undefined) || sorts.includes('unknown')
							? undefined
							: true;
					return [{ name: subject(row), right, ...about(row, reading, sizes) }];
				}),
				pair.left.plug,
			),
);

/** One half read at its face, the other at its wires. */
export const mirrored: Check = ({ pairs, alone }) => [
	...pairs.map(
		({ left, mirrored }): Part => ({
			name: left.plug,
			right: mirrored === null,
			...(mirrored
				? { reason: `With ${mirrored.how}, ${mirrored.agree} pins agree; as they are given, ${mirrored.now} do.` }
				: {}),
		}),
	),
	...alone.map(({ plug }): Part => ({ name: plug, right: undefined })),
];
