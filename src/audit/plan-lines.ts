import { type Harm, harms, type Rule, type Stage, stages } from '../rulebook/rulebook.ts';
import type { Access } from '../sheet/access.ts';
import { isAtOnce, type Question } from '../sheet/question.ts';
import type { Assessment } from './assess.ts';
import type { Finding } from './audit.ts';
import { type FindOut, findOuts } from './find-out.ts';
import { isListed } from './stages.ts';

/** A line of the next stage: work that a finding asks for, or an answer to find out. */
export interface PlanLine {
	/** Stands for this line alone, in any order of lines. */
	readonly key: string;
	readonly finding: Finding | null;
	/** What it settles, and the question; null for work. */
	readonly findOut: FindOut | null;
	readonly access: Access;
	/** Hands-on time. */
	readonly minutes: number;
	readonly opens: readonly Access[];
	/** The worst that waits for it. */
	readonly harm: Harm;
	/** Found out by looking, without a tool. */
	readonly look: boolean;
	/** Keys of the lines that come first. */
	readonly needs: readonly string[];
}

/** What is planned: the first stage that is not ready, with what stands open before it; the rest when all are. */
export function nextStage({ audit }: Pick<Assessment, 'audit'>): Stage | null {
	const held = audit.stages.find(({ ready }) => !ready);
	return held?.stage ?? (audit.findings.some(isListed) ? 'tidy' : null);
}

/**
 * Every open line of a stage and of those before it, most urgent first, each with the lines that it needs first. What cannot
 * be judged becomes the answers that would decide it; where none would, it stays a line of its own.
 */
export function planLines(assessment: Assessment, stage: Stage): PlanLine[] {
	const { audit, model } = assessment;
	const until = stages.slice(0, stages.indexOf(stage) + 1);
	const rules = new Map(model.rulebook.rules.map(rule => [rule.id, rule]));
	const asked = new Map(
		findOuts(assessment)
			.filter(findOut => until.includes(findOut.stage))
			.map(findOut => [findOut.question.id, findOut]),
	);
	const work = audit.findings.filter(
		finding =>
			until.includes(finding.stage) &&
			isListed(finding) &&
			(finding.verdict !== 'cannot-tell' || !finding.missing.some(answer => asked.has(answer))),
	);
	return withNeeds(
		[...work.map(finding => workLine(finding, rules.get(finding.rule)!)), ...[...asked.values()].map(lineOf)],
		rules,
	);
}

type Draft = Omit<PlanLine, 'needs'>;

const workLine = (finding: Finding, { access, minutes, opens }: Rule): Draft => ({
	key: [finding.rule, finding.subject ?? ''].join(' ').trimEnd(),
	finding,
	findOut: null,
	access,
	minutes,
	opens,
	harm: finding.harm,
	look: false,
});

function lineOf(findOut: FindOut): Draft {
	const { id, access, minutes, effort }: Question = findOut.question;
	const worst = Math.min(...findOut.settles.map(({ harm }) => harms.indexOf(harm)));
	return {
		key: id,
		finding: null,
		findOut,
		access,
		minutes,
		opens: [],
		harm: harms[worst]!,
		look: isAtOnce(effort) || access === 'papers',
	};
}

/**
 * The lines with what each needs first, as far as that is open: work needs what its rule says, a test what the rules say that
 * it settles. A need that would go round in a circle, as answers that settle many rules can make one, is left out.
 */
function withNeeds(lines: readonly Draft[], rules: ReadonlyMap<string, Rule>): PlanLine[] {
	const about = new Map<string, string[]>();
	for (const { key, finding, findOut } of lines) {
		const names = finding ? [finding.rule, finding.subject ?? ''] : findOut!.settles.map(({ rule }) => rule);
		for (const name of new Set(names)) about.set(name, [...(about.get(name) ?? []), key]);
	}
	const first = new Map<string, string[]>(lines.map(({ key }) => [key, []]));
	const leadsTo = (from: string, to: string): boolean =>
		from === to || first.get(from)!.some(before => leadsTo(before, to));
	const add = ({ key }: Draft, named: readonly string[]) => {
		for (const before of named.flatMap(need => rules.get(need)?.needs ?? []).flatMap(need => about.get(need) ?? []))
			if (!first.get(key)!.includes(before) && !leadsTo(before, key)) first.get(key)!.push(before);
	};
	// What rules say of their own work goes before what follows for tests.
	for (const line of lines) if (line.finding) add(line, [line.finding.rule]);
	for (const line of lines)
		if (line.findOut && !line.look)
			add(
				line,
				line.findOut.settles.map(({ rule }) => rule),
			);
	return lines.map(line => ({ ...line, needs: first.get(line.key)! }));
}
