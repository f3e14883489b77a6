import { describe, expect, test } from 'vitest';
import type { Assessment } from '../../../src/audit/assess.ts';
import type { Finding } from '../../../src/audit/audit.ts';
import { onlyKnownFrom, standsInTheWay } from '../../../src/audit/stages.ts';
import { composeAudit } from '../../../src/report/compose/compose.ts';
import { type Block, figuresOf, type Inline } from '../../../src/report/document.ts';
import { renderAudit } from '../../../src/report/render.ts';
import { emptySheet } from '../../../src/sheet/sheet.ts';
import { stages } from '../../../src/sheet/stage.ts';
import { textIn } from '../../../src/sheet/text.ts';
import { audited, brokenBuild, changed, thirdOf } from '../../support/audited.ts';
import { buildSheet, testModel } from '../../support/model.ts';

const broken = audited(brokenBuild(), { next: true });
const third = audited(thirdOf(brokenBuild()), { next: true });
const empty = audited(emptySheet('nothing'));
const healthy = audited(buildSheet('unboosted'));
const each = [
	['broken', broken],
	['third', third],
	['empty', empty],
	['healthy', healthy],
] as const;

const markdown = (of: Assessment) => renderAudit(of, 'md', '', true).text;
/** The Markdown without its line breaks. */
const flat = (text: string) => text.replace(/\s+/g, ' ');
const partTitles = (of: Assessment) => [...markdown(of).matchAll(/^##? (.*)$/gm)].map(([, title]) => title);
const inlineWords = (text: readonly Inline[]) =>
	text
		.map(part => {
			if (typeof part === 'string') return part;
			return 'strong' in part ? part.strong : 'part' in part ? part.part : part.code;
		})
		.join('');
/** The blocks from the list on, those of later stages among them. */
function listBlocks(of: Assessment): Block[] {
	const { blocks } = composeAudit(of);
	const start = blocks.findIndex(block => block.is === 'heading' && block.text === 'The list');
	return blocks.slice(start).flatMap(block => (block.is === 'fold' ? block.blocks : [block]));
}
const tasks = (of: Assessment) =>
	listBlocks(of)
		.filter((block): block is Extract<Block, { is: 'task' }> => block.is === 'task')
		.map(({ text, details }) => ({ text: inlineWords(text), details: details.map(inlineWords) }));
const askedIn = (of: Assessment) =>
	tasks(of).flatMap(({ text, details }) =>
		// A line an answer, or a card with an answer in each of its lines.
		/^Find out [a-z ]+: .* Settles: /.test(text)
			? [text, ...details].flatMap(words => /\((\w+\.\w+)\)(?: Settles: |$)/.exec(words)?.[1] ?? [])
			: [],
	);

describe('the parts of an audit', () => {
	test('stand in their order', () => {
		const since = { date: '2026-04-01', changes: [], logs: [], numbers: [] };
		expect(partTitles({ ...broken, audit: { ...broken.audit, since } })).toEqual([
			'Swap audit: word mule',
			'Since last time',
			'The list',
			'What gives out first',
			'What you should read',
			'The day itself',
			'Measure next',
			'Parts to get',
			'All cautions in full',
			'In the details',
			'The numbers',
			'The answers as given',
			'What was not judged, and why',
			'The other procedures',
			'The wiring worksheet',
		]);
	});

	test('are the same without pictures', () => {
		const all = composeAudit(broken);
		const without = (blocks: readonly Block[] = []) => blocks.filter(({ is }) => is !== 'figure');
		expect(figuresOf(all).length).toBe(4);
		expect(composeAudit(broken, { pictures: false, details: true })).toEqual({
			...all,
			blocks: without(all.blocks),
			details: without(all.details),
		});
	});

	test.each(['broken', 'third'])('are the same where only what a page shows is worked out: %s', name => {
		const sheet = name === 'broken' ? brokenBuild() : thirdOf(brokenBuild());
		const [page, whole] = (['page', 'whole'] as const).map(extent => audited(sheet, { draws: 20, extent }));
		const known = ({ verdict, unproved }: Finding) => verdict === 'holds' && !unproved;
		expect(whole!.audit.findings.filter(known).every(({ why }) => why !== '')).toBe(true);
		expect(page!.audit.findings.filter(known).every(({ why }) => why === '')).toBe(true);
		expect(renderAudit(page!, 'md', '').text).toBe(renderAudit(whole!, 'md', '').text);
	});

	test('speak of full load where an engine has no boost', () => {
		// An air meter in another bore than its curve is settled before full load, with boost or without.
		const bores = {
			'sensors.meter_pipe_bore': { value: 3.5, unit: 'in' },
			'sensors.meter_curve_bore': { value: 3, unit: 'in' },
		};
		const unboosted = markdown(audited(changed(buildSheet('unboosted'), bores)));
		expect(unboosted).toContain('Before full load');
		expect(unboosted).not.toContain('Before it makes boost');
		expect(markdown(broken)).toContain('Before it makes boost');
	});

	test('name a part once, with or without its article', () => {
		const parts = flat(markdown(broken).split('## Parts to get')[1]!.split('\n## ')[0]!);
		const bare = [...parts.matchAll(/- (?:a |an |the )?([^:]+): /g)].map(([, thing]) => thing);
		expect(new Set(bare).size).toBe(bare.length);
	});

	test('name a few usual values on a line of the list, and only count many', () => {
		const assumptions = tasks(broken).flatMap(({ details }) =>
			details.filter(detail => detail.startsWith('Assumed: ')),
		);
		expect(assumptions.length).toBeGreaterThan(0);
		for (const detail of assumptions) expect(detail.split(', ').length).toBeLessThanOrEqual(6);
	});

	test('leave themselves out when there is nothing to say', () => {
		for (const title of ['Measure next', 'Parts to get', 'Since last time'])
			expect(partTitles(healthy)).not.toContain(title);
		expect(markdown(healthy)).toContain('Nothing is known to be wrong');
		expect(partTitles(empty)).not.toContain('The answers as given');
	});

	test.each(each)('%s: never says safe, legal or roadworthy, nor a value that is none', (_, assessment) => {
		expect(markdown(assessment)).not.toMatch(/\b(safe|legal|roadworthy)\b/i);
		expect(markdown(assessment)).not.toMatch(/undefined|NaN|null|\[object/);
	});
});

describe('cautions', () => {
	const inFull = (of: Assessment) => /\n## All cautions in full\n(.*?)\n## /s.exec(markdown(of))![1]!;

	test.each(each)('%s: every caution of a listed job stands within it, and in full at the back', (_, of) => {
		const { rules, questions, cautions } = of.model.rulebook;
		const named = new Set(['law', 'licensed-help']);
		for (const block of listBlocks(of)) {
			if (block.is !== 'task' || !block.mark) continue;
			const id = block.mark.key.split(' ')[0];
			const own = [...rules, ...questions].find(one => one.id === id)!.cautions;
			const inside = block.details.map(inlineWords).join(' ');
			for (const caution of own) {
				named.add(caution);
				expect(inside, block.mark.key).toContain(cautions.find(one => one.id === caution)!.title);
			}
		}
		if (of !== healthy) expect(named.size).toBeGreaterThan(6);
		const full = inFull(of);
		for (const { id, title } of cautions) if (named.has(id)) expect(full).toContain(`**${title}.**`);
	});

	test.each(each)('%s: every caution that a step names stands in full', (_, of) => {
		const [before, after] = markdown(of).split('## The day itself');
		const named = [...flat(after ?? before!).matchAll(/\*\*Caution:\*\* ([^.]*?)\.(?= \d+\. |$)/g)];
		const full = inFull(of);
		for (const [, titles] of named) for (const title of titles!.split('; ')) expect(full).toContain(`**${title}.**`);
	});

	test('one that nothing names is left out', () => {
		expect(inFull(healthy)).not.toContain('**Dust.**');
	});
});

describe('the list', () => {
	test('has a task for every finding that fails, within a stage in the order of the audit', () => {
		const fails = broken.audit.findings.filter(({ verdict }) => verdict === 'fails');
		expect(fails.length).toBeGreaterThan(2);
		const shown = tasks(broken).filter(({ details }) => details.some(detail => detail.startsWith('Done when: ')));
		expect(shown.length).toBe(fails.length);
		const places = fails.map(({ title, why, prove, stage }) => {
			const at = shown.findIndex(({ text, details }) => text.startsWith(title) && details.includes(`Why: ${why}`));
			expect(at, title).toBeGreaterThanOrEqual(0);
			expect(shown[at]!.details).toContain(`Done when: ${prove}`);
			return { stage, at };
		});
		// The next stage comes first; the others follow.
		for (const stage of stages) {
			const own = places.filter(place => place.stage === stage).map(({ at }) => at);
			expect(own, stage).toEqual(own.toSorted((a, b) => a - b));
		}
	});

	test.each([
		['third', third],
		['empty', empty],
	])('%s: asks once for each answer that something serious waits for', (_, assessment) => {
		const { knownFrom } = assessment.model.judge;
		const wanted = assessment.audit.findings
			.filter(finding => finding.verdict === 'cannot-tell' && standsInTheWay(finding))
			.flatMap(({ missing, stage }) => missing.filter(id => !onlyKnownFrom(stage, [knownFrom(id)])));
		expect([...askedIn(assessment)].sort()).toEqual([...new Set(wanted)].sort());
	});

	test('how to get an answer that is asked for stands once, further down', () => {
		const [, rest] = markdown(third).split('\n## What gives out') as [string, string];
		expect(askedIn(third).length).toBeGreaterThan(50);
		for (const id of askedIn(third)) {
			const { how } = testModel().rulebook.questions.find(question => question.id === id)!;
			expect(flat(rest), id).toContain(
				textIn(how, 'us')
					.split(/[^\w ]/)[0]!
					.trim(),
			);
		}
	});

	test('says how many lines of a stage wait for answers asked for above', () => {
		expect(markdown(third)).toMatch(/^\d+ more lines? waits? here for answers that other lines ask for\.$/m);
	});

	test('a rule that could not be worked out is a line of its stage, and printed at the end', () => {
		const [first, ...others] = broken.audit.findings;
		const odd = { ...first!, verdict: 'not-evaluated', why: 'Not worked out: the drop is not finite.' } as const;
		const text = markdown({ ...broken, audit: { ...broken.audit, findings: [odd, ...others] } });
		expect(text).toContain(`- [ ] **${odd.title}: not worked out.**`);
		expect(flat(text)).toContain(`- ${odd.title}. Not worked out: the drop is not finite.`);
	});
});

describe('the numbers', () => {
	test.each(each)('%s: every quantity has its value, what it needs, or that it does not apply', (_, of) => {
		const [, part] = /\n## The numbers\n(.*?)\n## (?:The answers|What was not)/s.exec(markdown(of)) ?? [];
		const named = new Set([...flat(part!).matchAll(/`([^`]+)`/g)].flatMap(([, ids]) => ids!.split(', ')));
		// What only a log gives is reported by the log's own report.
		const own = Object.keys(of.audit.quantities).filter(id => !id.startsWith('log.'));
		for (const id of own) expect(named, id).toContain(id);
	});

	test('follow hidden steps back to answers, as they were given', () => {
		const [, line] = /- `sensors.meter_voltage_peak` (.*?) - `/.exec(flat(markdown(broken))) ?? [];
		expect(line).toMatch(/sensors.meter_curve [\d.]+ V at [\d.]+ kg\/h/);
	});

	test('give the other unit set beside the American one', () => {
		expect(markdown(broken)).toMatch(/`engine.power` \*\*\d+ hp\*\* \(\d+ kW\)/);
	});
});

describe('the answers as given', () => {
	test('come with unit, how they are known, and notes', () => {
		const text = flat(markdown(broken));
		expect(text).toContain('- `ignition.gap` 0.06 in (measured). Note: word gap');
		expect(text).toContain('- `engine.oil_pressure_idle` not known. Note: word oil');
		expect(text).toContain('word feed (from word box to word pump, to-do, 12 A, 15 ft)');
		const gap = { value: 0.06, unit: 'in', known: 'measured', spread: 0.002 } as const;
		expect(markdown(audited(changed(brokenBuild(), { 'ignition.gap': gap })))).toContain(
			'- `ignition.gap` 0.06 in (measured, give or take 0.002).',
		);
	});

	test('say which are not in effect', () => {
		const unboosted = changed(buildSheet('unboosted'), { 'boost.spring': { value: 7, unit: 'psi' } });
		expect(markdown(audited(unboosted))).toContain('- `boost.spring` 7 psi (estimate), not in effect here.');
	});
});

test('rules that a pack changed are named', () => {
	const model = testModel();
	const change = { rule: 'fuel.ordinary-hose', pack: 'mine.yaml', fields: ['why', 'do'] };
	const rulebook = { ...model.rulebook, changed: [change] };
	expect(markdown({ ...broken, model: { ...model, rulebook } })).toContain(
		'- `fuel.ordinary-hose` (why, do) by the pack mine.yaml.',
	);
});
