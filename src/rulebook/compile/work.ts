import { type Access, accesses } from '../../sheet/access.ts';
import { type Rule, stages } from '../rulebook.ts';
import { type Fields, quote } from './fields.ts';

/** Where the work of a rule is and what it takes. */
export type Work = Pick<Rule, 'access' | 'minutes' | 'opens'>;

/** What is usual in a topic; null where its file does not say. */
export interface UsualWork {
	readonly access: Access | null;
	readonly minutes: number | null;
	readonly opens: readonly Access[];
	/** Of a pack nothing is asked; what it leaves open falls back. */
	readonly pack: boolean;
}

/** What stands in where a pack does not say. */
const fallback = { access: 'bay', minutes: 30 } as const;

/** More than a week of evenings is no line of work. */
const mostMinutes = 2400;

/** What a topic file says at its head for all its rules and questions. */
export const readUsualWork = (root: Fields, pack: boolean): UsualWork => ({
	access: root.has('access') ? root.oneOf('access', accesses, fallback.access) : null,
	minutes: root.has('minutes') ? readMinutes(root) : null,
	opens: readOpens(root),
	pack,
});

/** Access, minutes and what it opens, of a rule: its own, else what is usual in its topic. Missing in own rules: noted. */
export function readWork(fields: Fields, usual: UsualWork): Work {
	const own = readUsualWork(fields, usual.pack);
	const access = own.access ?? usual.access;
	const minutes = own.minutes ?? usual.minutes;
	if (!usual.pack && access === null)
		fields.reportStart(`access: say where this work is, here or at the head of the file: ${accesses.join(', ')}`);
	if (!usual.pack && minutes === null)
		fields.reportStart('minutes: say how long this work takes, here or at the head of the file');
	return {
		access: access ?? fallback.access,
		minutes: minutes ?? fallback.minutes,
		// What a file says of its usual place does not go for a rule that is done elsewhere.
		opens: own.opens.length > 0 || own.access !== null ? own.opens : usual.opens,
	};
}

/** Hands-on time, min. */
export function readMinutes(fields: Fields): number {
	const minutes = fields.number('minutes');
	if (!Number.isInteger(minutes) || minutes < 1 || minutes > mostMinutes)
		fields.report('minutes', `minutes: a whole number is needed here, 1 to ${mostMinutes}`);
	return minutes;
}

function readOpens(fields: Fields): Access[] {
	const words = fields.texts('opens', false);
	for (const word of words)
		if (!(accesses as readonly string[]).includes(word))
			fields.report('opens', `opens: ${quote(word)} is not one of ${accesses.join(', ')}`);
	return words as Access[];
}

/**
 * Notes each `covered_by` that names no rule, and each `needs` that names neither a rule nor a circuit, that is settled in a
 * later stage only, or that goes round in a circle: then nothing could come first.
 */
export function refuseNeeds(
	rules: readonly Rule[],
	fieldsOf: ReadonlyMap<string, Fields>,
	circuits: ReadonlySet<string>,
): void {
	const byId = new Map(rules.map(rule => [rule.id, rule]));
	for (const rule of rules) {
		const report = (message: string) => fieldsOf.get(rule.id)?.report('needs', `needs: ${message}`);
		if (rule.covered_by !== '' && !byId.has(rule.covered_by))
			fieldsOf.get(rule.id)?.report('covered_by', `covered_by: ${quote(rule.covered_by)} is no rule`);
		for (const need of rule.needs) {
			const first = byId.get(need);
			if (!first && !circuits.has(need)) report(`${quote(need)} is neither a rule nor a circuit`);
			else if (first && settledBy(first) > settledBy(rule))
				report(`${quote(need)} is settled before stage ${first.stage} only, after this rule of stage ${rule.stage}`);
			else if (first && leadsTo(first, rule, byId)) report(`${quote(need)} itself needs ${rule.id}`);
		}
	}
}

/** The place of a rule's stage; what belongs before the engine goes in is done with what comes before it cranks, once it is in. */
const settledBy = ({ stage }: Rule): number => Math.max(stages.indexOf(stage), stages.indexOf('crank'));

/** Whether one rule needs another, by however many steps. */
function leadsTo(from: Rule, to: Rule, byId: ReadonlyMap<string, Rule>): boolean {
	const seen = new Set<Rule>();
	const open = [from];
	for (let rule = open.pop(); rule; rule = open.pop()) {
		if (rule === to) return true;
		if (seen.has(rule)) continue;
		seen.add(rule);
		open.push(...rule.needs.flatMap(id => byId.get(id) ?? []));
	}
	return false;
}
