import { expect, test } from 'vitest';
import { addPacks } from '../../src/rulebook/compile/pack.ts';
import { testModel } from '../support/model.ts';

const { rulebook, quantities, wordings } = testModel();

test('every answer and quantity has a short name, and no two share one', () => {
	const labels = [...rulebook.questions, ...quantities].map(({ label }) => label);
	for (const label of labels) expect(label.length, label).toBeLessThan(46);
	for (const label of labels) expect(label).not.toMatch(/_|\.$/);
	expect(new Set(labels).size).toBe(labels.length);
	expect(wordings.us.label('injectors.duty')).toBe('injector duty');
	expect(wordings.us.label('fuel.pressure (my pack)')).toBe('fuel pressure (my pack)');
});

test('a choice reads in a sentence as its question says, in a list as the list has it', () => {
	const { said, choices } = rulebook.questions.find(({ id }) => id === 'sensors.coolant_gauge')!;
	expect(said!.unmatched).toBe('a sender from a different vehicle');
	expect(said!['matched-sender']).toBe(choices['matched-sender']);
	expect(wordings.us.show('sensors.coolant_gauge', 'unmatched')).toBe(choices.unmatched);
	expect(wordings.us.fill('It reads {sensors.coolant_gauge}.', () => 'unmatched')).toBe(
		'It reads a sender from a different vehicle.',
	);
});

test("a pack's question without a label goes by its id, with a warning", () => {
	const text = `pack: own
questions:
  - id: engine.cam_lift
    ask: What lift has the cam?
    how: On the cam card that came with it, as valve lift.
    kind: choice
    choices: {low: stock, high: more than stock}
    pass: full
rules:
  - id: engine.cam-lift-high
    title: Much valve lift
    stage: fire
    harm: engine
    holds: engine.cam_lift == "low"
    why: The lift is {engine.cam_lift}.
    do: [Check the gap of valve to piston with clay.]
    prove: Clay thicker than 2 mm.
    source: [practice]
    examples:
      - {on: boosted, given: {engine.cam_lift: low}, then: holds}
      - {on: boosted, given: {engine.cam_lift: high}, then: fails}
      - {on: boosted, then: cannot-tell}
`;
	const { rulebook: with_, problems, warnings } = addPacks(rulebook, [{ path: 'own.yaml', text }], quantities);
	expect(problems).toEqual([]);
	expect(with_.questions.find(({ id }) => id === 'engine.cam_lift')!.label).toBe('cam lift');
	const messages = warnings.map(({ message }) => message).join('\n');
	expect(messages).toContain('label: a short name');
	expect(messages).toContain('engine.cam_lift does not say how it reads in a sentence');
	expect(messages).toContain('2 mm');
});
