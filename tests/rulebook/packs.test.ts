import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { assess } from '../../src/audit/assess.ts';
import { makeModel } from '../../src/audit/model.ts';
import { makeGraph } from '../../src/quantities/graph.ts';
import { quantities } from '../../src/quantities/model/all.ts';
import { addPacks } from '../../src/rulebook/compile/pack.ts';
import { runExamples } from '../../src/rulebook/examples.ts';
import { emptySheet, withAnswer } from '../../src/sheet/sheet.ts';
import { sha256, testModel } from '../support/model.ts';

const text = readFileSync(fileURLToPath(new URL('../../demo/packs/invented-family.yaml', import.meta.url)), 'utf8');
const base = testModel().rulebook;
const added = (pack: string) => addPacks(base, [{ path: 'pack.yaml', text: pack }], quantities);

test('the demo pack has no problem, and its examples come out as they say', () => {
	const { rulebook, problems } = added(text);
	expect(problems).toEqual([]);
	const own = rulebook.rules.filter(({ id }) => ['engine.gallery-plug-pressed', 'ignition.gap-too-wide'].includes(id));
	expect(own.length).toBe(2);
	expect(runExamples(rulebook, makeGraph(rulebook.questions, quantities), own)).toEqual([]);
});

describe('a prefill', () => {
	const model = makeModel(added(text).rulebook, sha256);
	const sheet = [
		['engine.year', { value: 1999 }],
		['sensors.cam_harness', { value: 'three-wire' }],
	].reduce((now, [id, answer]) => withAnswer(now, id as string, answer as never), emptySheet('mule'));
	const { audit } = assess(model, { sheet, warnings: [] }, { date: '2026-05-01', units: 'us', tool: 'test', draws: 0 });
	const cam = audit.findings.find(({ rule }) => rule === 'sensors.cam-wires-differ')!;

	test('decides while the answer is missing, and is named with its pack', () => {
		expect(cam.verdict).toBe('fails');
		expect(cam.assumed).toContain('sensors.cam_engine (invented family)');
	});

	test('is never written into the sheet', () => {
		expect(sheet.answers.sensors).not.toHaveProperty('cam_engine');
	});

	test('gives way to an answer', () => {
		const answered = withAnswer(sheet, 'sensors.cam_engine', { value: 'three-wire' });
		const after = assess(
			model,
			{ sheet: answered, warnings: [] },
			{ date: '2026-05-01', units: 'us', tool: 'test', draws: 0 },
		);
		expect(after.audit.findings.find(({ rule }) => rule === 'sensors.cam-wires-differ')).toMatchObject({
			verdict: 'holds',
			assumed: [],
		});
	});
});

test('a changed threshold is in force, and told', () => {
	const { rulebook } = added(text);
	expect(rulebook.rules.find(({ id }) => id === 'ignition.gap-too-wide')!.thresholds.spare!.value).toEqual([
		'value',
		0.1,
	]);
	expect(rulebook.changed).toEqual([
		{ rule: 'ignition.gap-too-wide', pack: 'invented family', fields: ['thresholds', 'examples'] },
	]);
});

describe('a pack cannot', () => {
	test.each([
		['change a stage', 'changes:\n  - {rule: fuel.worm-clamps, stage: tidy}', /a pack cannot change "stage" of a rule/],
		['change a harm', 'changes:\n  - {rule: fuel.worm-clamps, harm: annoys}', /a pack cannot change "harm" of a rule/],
		[
			'change what a rule holds',
			'changes:\n  - {rule: fuel.worm-clamps, holds: "true"}',
			/a pack cannot change "holds" of a rule/,
		],
		['change a rule that is none', 'changes:\n  - {rule: fuel.nothing, why: x}', /is no rule/],
		[
			'give a threshold another kind',
			'changes:\n  - {rule: ignition.gap-too-wide, thresholds: {spare: 5 psi}}',
			/is a ratio, this is a pressure/,
		],
		[
			"put a rule in another's place",
			`rules:\n${text.slice(text.indexOf('  - id: engine.gallery'), text.indexOf('\n\n# Words')).replace('engine.gallery-plug-pressed', 'fuel.worm-clamps')}`,
			/is already a rule/,
		],
		['remove a rule', 'remove: [fuel.worm-clamps]', /"remove" is not a field here/],
		['prefill what is no answer', 'prefills:\n  - {answer: engine.power, value: 3}', /is no answer/],
	] as const)('%s', (_, body, message) => {
		const { problems } = added(`pack: bad\nsection: engine\n${body}\n`);
		expect(problems.map(problem => problem.message).join('\n')).toMatch(message);
	});
});
