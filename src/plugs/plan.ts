import type { Circuit } from './circuit.ts';
import type { Reading, ReadPair } from './reading.ts';
import { addedWire } from './remedy.ts';
import type { Row } from './rows.ts';

/** How much there is to do: join, insulate and unknown in pins, move and add in wires. */
export interface Counts {
	readonly join: number;
	readonly move: number;
	readonly add: number;
	readonly insulate: number;
	readonly unknown: number;
}

/** What to buy of a size and a color: m, a tenth to spare included. */
export interface WireToBuy {
	readonly gauge: number;
	readonly color: string | null;
	readonly length: number;
	readonly wires: number;
}

/** The work on all plugs: how much of each kind, what is dangerous, what to buy. */
export interface Plan {
	readonly counts: Counts;
	/** Rows whose meeting can hurt somebody or the engine, worst first. */
	readonly dangers: readonly Row[];
	readonly comfort: readonly Circuit[];
	readonly wire: readonly WireToBuy[];
	/** Fuses by rating, A, and how many. */
	readonly fuses: readonly { readonly rating: number; readonly count: number }[];
	readonly terminals: number;
}

const spare = 1.1;

/** The plan of plugs that are read. */
export function planOf(reading: Reading): Plan {
	const rows = reading.pairs.flatMap(({ rows }) => rows);
	const acts = rows.flatMap(row => row.acts);
	const count = (...kinds: readonly string[]) => acts.filter(({ kind }) => kinds.includes(kind)).length;
	const lone = reading.alone.reduce((sum, { pins }) => sum + pins.length, 0);
	return {
		counts: {
			join:
				count('join', 'done') +
				rows.filter(({ pair, acts }) => pair.by === 'circuit' && acts.some(({ kind }) => kind === 'splice')).length,
			move: count('move'),
			add: count('add'),
			insulate: count('insulate'),
			unknown: rows.filter(({ met }) => met.meeting === 'unknown').length + lone,
		},
		dangers: rows.filter(isDanger).sort(byHarm),
		comfort: comfortOf(reading),
		...shopping(rows, reading),
		terminals: count('move', 'add') + count('add'),
	};
}

/** Before the plugs meet: what burns, kills, or hurts somebody or the engine in another way. */
export const isDanger = ({ met, pair }: Row): boolean =>
	!(pair as ReadPair).mirrored && met.meeting !== 'unknown' && (met.harm === 'person' || met.harm === 'engine');

const byHarm = (a: Row, b: Row): number => rank(a) - rank(b);
const rank = ({ met }: Row): number =>
	['burns', 'kills'].indexOf(met.meeting) * 2 + (met.meeting === 'wrong' ? 6 : 0) + (met.harm === 'person' ? 0 : 1);

/** Circuits that only comfort needs, each once. */
const comfortOf = ({ halves }: Reading): Circuit[] => [
	...new Set(
		halves.flatMap(({ pins }) =>
			pins.flatMap(({ circuit }) => (circuit?.comfort && circuit.id !== 'airbag' ? [circuit] : [])),
		),
	),
];

function shopping(rows: readonly Row[], { answered }: Reading): Pick<Plan, 'wire' | 'fuses'> {
	const wires = new Map<string, WireToBuy>();
	const fuses = new Map<number, number>();
	for (const row of rows) {
		const wire = addedWire(row, answered);
		if (!wire) continue;
		const color = (row.left?.circuit === row.added ? row.left : row.right)?.color ?? null;
		const key = JSON.stringify([wire.gauge, color]);
		const before = wires.get(key);
		wires.set(key, {
			gauge: wire.gauge,
			color,
			length: (before?.length ?? 0) + wire.length * spare,
			wires: (before?.wires ?? 0) + 1,
		});
		if (wire.fuse !== null) fuses.set(wire.fuse, (fuses.get(wire.fuse) ?? 0) + 1);
	}
	return {
		wire: [...wires.values()].sort((a, b) => a.gauge - b.gauge || ((a.color ?? '') < (b.color ?? '') ? -1 : 1)),
		fuses: [...fuses].map(([rating, count]) => ({ rating, count })).sort((a, b) => a.rating - b.rating),
	};
}

/** How many of each, in a line. */
export function countsInWords({ join, move, add, insulate, unknown }: Counts): string {
	const of = (count: number, one: string, more: string) => `${count} ${count === 1 ? one : more}`;
	return `${of(join, 'pin joins as it is', 'pins join as they are')}, ${of(move, 'wire moves', 'wires move')}, ${of(add, 'wire is added', 'wires are added')}, ${of(insulate, 'pin is cut off and insulated', 'pins are cut off and insulated')}, ${of(unknown, 'pin is not known', 'pins are not known')}.`;
}
