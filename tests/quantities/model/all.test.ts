import { describe, expect, test } from 'vitest';
import { quantities } from '../../../src/quantities/all.ts';
import { emptySheet } from '../../../src/sheet/sheet.ts';
import { testModel } from '../../support/model.ts';
import { stateOf } from '../by-hand.ts';

const byId = new Map(quantities.map(quantity => [quantity.id, quantity]));

describe('the list of quantities', () => {
	test('names each once, and none that is a question', () => {
		expect(byId.size).toBe(quantities.length);
		const asked = new Set(testModel().rulebook.questions.map(({ id }) => id));
		expect(quantities.filter(({ id }) => asked.has(id))).toEqual([]);
	});
});

test('of an empty sheet nothing is known but the air, the idle and what is usual; the rest says what it lacks', () => {
	const { graph, values, missing, broken } = stateOf(emptySheet('empty'));
	expect(broken.size).toBe(0);
	for (const { id } of quantities) {
		const slot = graph.slotOf.get(id)!;
		if (values[slot] !== undefined) continue;
		expect(missing[slot], id).not.toEqual([]);
	}
	const known = (id: string) => values[graph.slotOf.get(id)!];
	expect(known('air.ambient_pressure')).toBeTypeOf('number');
	expect(known('engine.oil_pressure_needed')).toBeTypeOf('number');
	expect(known('engine.power')).toBeUndefined();
});
