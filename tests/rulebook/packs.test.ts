import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { assess } from '../../src/audit/assess.ts';
import { makeModel } from '../../src/audit/model.ts';
import { solve, valueIn } from '../../src/graph/solve.ts';
import { quantities } from '../../src/log/quantities.ts';
import { givenAnswers } from '../../src/quantities/from-sheet.ts';
import { modelGraph } from '../../src/quantities/model-graph.ts';
import { composeAudit } from '../../src/report/compose/compose.ts';
import { addPacks } from '../../src/rulebook/compile/pack.ts';
import { runExamples, withoutPrefills } from '../../src/rulebook/examples.ts';
import { emptySheet, withAnswer } from '../../src/sheet/sheet.ts';
import { buildSheet, sha256, testModel } from '../support/model.ts';

const text = readFileSync(fileURLToPath(new URL('../../demo/packs/invented-family.yaml', import.meta.url)), 'utf8');
const base = testModel().rulebook;
const added = (pack: string) => addPacks(base, [{ path: 'pack.yaml', text: pack }], quantities);

test('the demo pack has no problem, and with it all examples come out as they say', () => {
	const { rulebook, problems } = added(text);
	expect(problems).toEqual([]);
	const bare = withoutPrefills(rulebook);
	expect(runExamples(bare, modelGraph(bare.questions, quantities))).toEqual([]);
	expect(rulebook.rules.length).toBe(base.rules.length + 1);
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

test('a changed threshold is in force, and stated', () => {
	const { rulebook } = added(text);
	expect(rulebook.rules.find(({ id }) => id === 'ignition.gap-too-wide')!.thresholds.spare!.value).toEqual([
		'value',
		0.1,
	]);
	expect(rulebook.changed).toEqual([
		{ rule: 'ignition.gap-too-wide', pack: 'invented family', fields: ['thresholds', 'examples'] },
	]);
});

test('the audit lists each rule that a pack changed, with the pack', () => {
	const model = makeModel(added(text).rulebook, sha256);
	const made = assess(
		model,
		{ sheet: emptySheet('mule'), warnings: [] },
		{ date: '2026-05-01', units: 'us', tool: 'test', draws: 0 },
	);
	expect(JSON.stringify(composeAudit(made))).toMatch(/ignition\.gap-too-wide.*invented family/);
	expect(model.fingerprint).not.toBe(testModel().fingerprint);
});

test('a prefill goes by the model year, and not before the year is known', () => {
	const model = makeModel(added(text).rulebook, sha256);
	const camIn = (year: number | null) => {
		const sheet = year === null ? emptySheet('mule') : withAnswer(emptySheet('mule'), 'engine.year', { value: year });
		return valueIn(solve(model.graph, givenAnswers(sheet, model.rulebook.questions)), 'sensors.cam_engine');
	};
	expect([camIn(null), camIn(1996), camIn(1997), camIn(2004)]).toEqual([
		undefined,
		'three-wire',
		'two-wire',
		'two-wire',
	]);
});

test('a topic file like those of the rulebook is a pack, named after its topic', () => {
	const bare = text.replace(/^pack: .*\n/m, '').replace(/^section: .*\n/m, '');
	const { rulebook, problems } = added(bare);
	expect(problems).toEqual([]);
	expect(rulebook.topics.at(-1)).toMatchObject({ topic: 'invented family', section: 'engine' });
	expect(rulebook.questions.find(({ id }) => id === 'engine.oil_gallery_plug')!.section).toBe('engine');
	expect(rulebook.changed[0]!.pack).toBe('invented family');
});

test('every rule that was there is there, with its stage and its harm', () => {
	const { rulebook } = added(text);
	const filed = (rules: typeof base.rules) => rules.map(({ id, stage, harm }) => `${id} ${stage} ${harm}`);
	expect(filed(rulebook.rules).slice(0, base.rules.length)).toEqual(filed(base.rules));
});

test('packs are added one after the other, by name of file', () => {
	const second = 'pack: second\nchanges:\n  - {rule: engine.gallery-plug-pressed, why: Said anew.}\n';
	const { rulebook, problems } = addPacks(
		base,
		[
			{ path: 'b.yaml', text: second },
			{ path: 'a.yaml', text },
		],
		quantities,
	);
	expect(problems).toEqual([]);
	expect(rulebook.rules.at(-1)!.why).toBe('Said anew.');
	expect(rulebook.changed.map(({ pack }) => pack)).toEqual(['invented family', 'second']);
});

describe('a pack cannot buy safety', () => {
	test('nothing that it stands in for proves a line, and the audit says so at its head', () => {
		const model = makeModel(added(text).rulebook, sha256);
		const sheet = withAnswer(buildSheet('unboosted'), 'sensors.cam_engine', undefined);
		const three = withAnswer(withAnswer(sheet, 'engine.year', { value: 1996 }), 'harness.year', { value: 1996 });
		const { audit, ...made } = assess(
			model,
			{ sheet: three, warnings: [] },
			{ date: '2026-05-01', units: 'us', tool: 'test', draws: 0 },
		);
		const cam = audit.findings.find(({ rule }) => rule === 'sensors.cam-wires-differ')!;
		expect(cam).toMatchObject({ verdict: 'holds', unproved: true });
		expect(audit.stages.find(({ stage }) => stage === 'fire')!.ready).toBe(false);
		expect(audit.packs).toEqual([
			{
				pack: 'invented family',
				prefills: ['sensors.cam_engine'],
				changes: [{ rule: 'ignition.gap-too-wide', fields: ['thresholds', 'examples'] }],
			},
		]);
		expect(JSON.stringify(composeAudit({ ...made, audit }).blocks.slice(0, 6))).toMatch(
			/invented family.*sensors\.cam_engine/,
		);
	});

	test("its words on a rule about people stand beside the rulebook's own", () => {
		const { rulebook, problems } = added(
			'pack: words\nchanges:\n  - {rule: fuel.worm-clamps, why: All fine., do: [Nothing.]}\n',
		);
		expect(problems).toEqual([]);
		const [before, after] = [base, rulebook].map(({ rules }) => rules.find(({ id }) => id === 'fuel.worm-clamps')!);
		expect(after!.why).toBe(`${before!.why} The pack words says: All fine.`);
		expect(after!.do).toEqual([...before!.do, 'The pack words says: Nothing.']);
	});

	test.each([
		['a leak test', 'fuel.leak_test', 'passed-at-full-pressure'],
		['an extinguisher', 'fuel.extinguisher', 'at-hand'],
		['a start inhibit', 'driveline.start_inhibit', 'clutch-switch'],
		['a hose', 'fuel.hose', 'injection-rated'],
		['what was logged', 'ignition.knock_seen', 'clean'],
	])('by answering for %s', (_, id, value) => {
		const { problems } = added(`pack: easy\nprefills:\n  - {answer: ${id}, value: ${value}}\n`);
		expect(problems[0]!.message).toMatch(/no pack can know it/);
	});

	const moved = (most: string) => `pack: moved
changes:
  - rule: cooling.cap-too-strong
    thresholds: {most: ${most}}
    examples: []
`;

	test('by moving a threshold the wrong way', () => {
		const said = (most: string) =>
			added(moved(most))
				.problems.map(({ message }) => message)
				.join('\n');
		expect(said('25 psi')).toMatch(/may only move "most" down/);
		expect(said('15 psi')).not.toMatch(/may only move|cannot be decided/);
	});
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
		[
			'move a threshold without examples for it',
			'changes:\n  - {rule: ignition.gap-too-wide, thresholds: {spare: 6 %}}',
			/a changed threshold needs examples of its own/,
		],
		[
			'set a threshold that the rule has not',
			'changes:\n  - {rule: fuel.worm-clamps, thresholds: {most: 6 %}}',
			/"most" is no threshold of fuel\.worm-clamps, which has none/,
		],
		['say what names nothing', 'changes:\n  - {rule: fuel.worm-clamps, why: "At {moon}."}', /"\{moon\}" is no answer/],
		[
			'make a usual value depend on itself',
			'prefills:\n  - {answer: engine.year, when: engine.year > 1990, value: "1999"}',
			/a circle: .*engine\.year/,
		],
		[
			'ask what is asked already',
			'questions:\n  - {id: engine.bore, ask: x, how: y, kind: length, unit: mm, plausible: [1 mm, 2 mm], hard: [1 mm, 2 mm], pass: full}',
			/"engine\.bore" is already a question/,
		],
		['be a topic that is there', 'topic: spark gap', /the topic "spark gap" is there already/],
		['remove a rule', 'remove: [fuel.worm-clamps]', /"remove" is not a field here/],
		[
			'prefill a choice that is none',
			'prefills:\n  - {answer: sensors.cam_engine, value: four-wire}',
			/"four-wire" is not one of the choices two-wire/,
		],
		['prefill what is no answer', 'prefills:\n  - {answer: engine.power, value: 3}', /is no answer/],
	] as const)('%s', (_, body, message) => {
		const { problems } = added(`pack: bad\nsection: engine\n${body}\n`);
		expect(problems.map(problem => problem.message).join('\n')).toMatch(message);
	});
});
