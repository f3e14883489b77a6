import { valueIn } from '../graph/solve.ts';
import { wireFor } from '../physics/fuse.ts';
import { allowedDrop } from '../physics/wire.ts';
import type { Plugs } from '../plugs/parts.ts';
import type { UsualCircuit } from '../rulebook/usual-circuit.ts';
import type { CircuitAnswer } from '../sheet/sheet.ts';
import type { Stage } from '../sheet/stage.ts';
import type { Text } from '../sheet/text.ts';
import { unitNamed } from '../units/names.ts';
import { toCanonical } from '../units/unit.ts';
import type { Assessment } from './assess.ts';
import { conditionIn } from './conditions.ts';

/** A circuit of the car: as answered, or a usual one that nobody has noted yet. */
export interface WiringRow {
	readonly circuit: string;
	readonly from: string;
	readonly to: string;
	readonly state: 'done' | 'to-do' | 'not-used' | 'not noted';
	/** The stage by which a usual circuit is wanted; null for one of this car's own. */
	readonly stage: Stage | null;
	/** A; null when neither answered nor usual. */
	readonly load: number | null;
	readonly loadAssumed: boolean;
	/** m, one way; null when not answered. */
	readonly length: number | null;
	/** What it needs, or why that cannot be said. */
	readonly gauge: number | null;
	readonly fuse: number | null;
	readonly words: Text;
}

const foot = toCanonical(1, unitNamed('ft', ['length'])!);
const plain = (name: string) =>
	name
		.toLowerCase()
		.replace(/[^a-z0-9]+/g, ' ')
		.trim();

/** A circuit by its name, and by those that sheets have had for it. */
const namesOf = ({ circuit, also }: UsualCircuit): string[] => [circuit, ...also].map(plain);

/** The wiring worksheet: the circuits noted, then the usual ones of such a build that were not, wire and fuse worked out. */
export function worksheet({ model, state, plugs }: Pick<Assessment, 'model' | 'state' | 'plugs'>): WiringRow[] {
	const list = valueIn(state, 'harness.circuits');
	const circuits = Array.isArray(list) ? (list as unknown as readonly CircuitAnswer[]) : [];
	const usual = model.rulebook.worksheet.filter(({ when }) => conditionIn(state, when) === true);
	// Of two usual ones of one name the first.
	const usualOf = new Map(usual.toReversed().flatMap(known => namesOf(known).map(name => [name, known] as const)));
	const named = new Set(circuits.map(({ circuit }) => plain(circuit)));
	const rest = usual
		.filter(known => !namesOf(known).some(name => named.has(name)))
		.map(({ circuit, pins }): Row => ({ circuit, state: 'not noted', ...ofPins(pins, plugs) }));
	const answered = (id: string | null | undefined): number | null => {
		const value = id ? valueIn(state, id) : null;
		return typeof value === 'number' ? value : null;
	};
	return [...circuits, ...rest].map((row: Row): WiringRow => {
		const known = usualOf.get(plain(row.circuit));
		const load = row.load ?? answered(known?.load);
		return sized({
			circuit: row.circuit,
			from: row.from || (ofPins(known?.pins ?? [], plugs)?.from ?? ''),
			to: row.to ?? '',
			state: row.state,
			stage: known?.stage ?? null,
			load: load ?? known?.current ?? null,
			loadAssumed: load === null && known !== undefined,
			length: row.length === undefined ? answered(known?.length) : row.length * foot,
			words: known?.words ?? '',
		});
	});
}

/** Where the plugs have a circuit, and whether it is joined there; null where they do not name it. */
function ofPins(circuits: readonly string[], plugs: Plugs | null): Pick<Row, 'from' | 'state'> | null {
	const rows = (plugs?.reading.pairs ?? []).flatMap(pair =>
		pair.rows.filter(({ left, right }) => [left, right].some(pin => pin?.circuit && circuits.includes(pin.circuit.id))),
	);
	if (rows.length === 0) return null;
	const done = rows.every(({ acts }) => acts.some(({ kind }) => kind === 'done'));
	return { from: rows.map(({ pair, pin }) => `${pair.left.plug} ${pin}`).join(', '), state: done ? 'done' : 'to-do' };
}

/** A circuit as answered, or one of the usual ones that was not. */
type Row = Omit<CircuitAnswer, 'state'> & { readonly state: WiringRow['state'] };

function sized(row: Omit<WiringRow, 'gauge' | 'fuse'>): WiringRow {
	const { load, length } = row;
	const found =
		load !== null && load > 0 && length !== null && length > 0 ? wireFor(load, length, allowedDrop) : undefined;
	return { ...row, gauge: found?.gauge ?? null, fuse: found?.fuse ?? null };
}
