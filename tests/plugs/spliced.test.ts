import { expect, test } from 'vitest';
import { plugsOf } from '../../src/plugs/parts.ts';
import type { PlugHalf } from '../../src/sheet/plugs.ts';
import { testModel } from '../support/model.ts';

const { vocabulary } = testModel().rulebook;
const ids = vocabulary.circuits
	.filter(({ id, shared }) => id !== 'airbag' && !shared)
	.map(({ id }) => id)
	.slice(0, 12);

/** The same circuits on both halves, the car's at other pins; one circuit on each half alone. */
const halves = (by: 'pin' | 'circuit'): PlugHalf[] => [
	{
		plug: 'dash',
		half: 'engine',
		mates_by: by,
		pins: ids.slice(1).map((circuit, at) => ({ pin: String(at + 1), circuit })),
	},
	{
		plug: 'dash',
		half: 'car',
		pins: [...ids.slice(2), ids[0]!].reverse().map((circuit, at) => ({ pin: String(at + 1), circuit })),
	},
];
const rowsBy = (by: 'pin' | 'circuit') =>
	plugsOf(halves(by), vocabulary, () => undefined, 'us')!.reading.pairs[0]!.rows;

test('halves that are cut off and spliced meet circuit by circuit: pins do not matter, no wire is moved', () => {
	const rows = rowsBy('circuit');
	const circuits = rows.map(({ left, right }) => [left?.circuit?.id, right?.circuit?.id]);
	for (const [left, right] of circuits) if (left && right) expect(left).toBe(right);
	expect(circuits.filter(([left, right]) => left && right)).toHaveLength(10);
	expect(
		circuits
			.filter(([left, right]) => !left || !right)
			.map(([left, right]) => left ?? right)
			.sort(),
	).toEqual([ids[0], ids[1]].sort());
	expect(rows.flatMap(({ acts }) => acts.map(({ kind }) => kind))).not.toContain('move');
});

test('the same halves pin by pin have wires to move', () => {
	expect(rowsBy('pin').flatMap(({ acts }) => acts.map(({ kind }) => kind))).toContain('move');
});
