import type { Assessment } from '../../audit/assess.ts';
import { type Check, checksByDistance } from '../../audit/intervals.ts';
import { shownUnit } from '../../units/shown.ts';
import { fromCanonical, toCanonical } from '../../units/unit.ts';
import { write } from '../../units/write.ts';
import { type Block, code, heading, type Inline, paragraph, strong } from '../document.ts';
import { cautionWords } from './names.ts';

/** What to look at again and when, for page one: what is done already is left out. */
export const checkLines = (assessment: Assessment): Inline[][] =>
	open(assessment).map(check => [strong(`${check.name}${whenDue(check, assessment)}: `), check.look]);

/** Checks to tick, and the cautions that they name. */
interface CheckTasks {
	readonly blocks: readonly Block[];
	readonly cautions: readonly string[];
}

export const noChecks: CheckTasks = { blocks: [], cautions: [] };

/** The checks by distance behind the evenings: those that an evening has are left out, and occasions. */
export function checkTasks(assessment: Assessment, planned: ReadonlySet<string>): CheckTasks {
	const { rulebook } = assessment.model;
	const checks = open(assessment).flatMap(check => {
		const rule = rulebook.rules.find(({ id }) => id === check.rule);
		return (rule ?? check.every) && !(rule && planned.has(rule.id)) ? [{ check, rule }] : [];
	});
	if (checks.length === 0) return noChecks;
	const tasks = checks.map(({ check, rule }): Block => {
		const cautions = cautionWords(rulebook, rule?.cautions ?? []);
		const mark = rule ? { mark: { key: rule.id, stage: rule.stage, access: rule.access } } : {};
		const text = [strong(`${check.name}${whenDue(check, assessment)}: `), check.look];
		return { is: 'task', text, details: cautions.length > 0 ? [cautions] : [], ...mark };
	});
	const whole = paragraph('What to do at each: ', code('swap-audit plan SHEET --day tidy'), '.');
	return {
		blocks: [heading(2, 'By distance since the first drive'), ...tasks, whole],
		cautions: checks.flatMap(({ rule }) => rule?.cautions ?? []),
	};
}

/** One that comes round is named when it is the next. */
const open = (assessment: Assessment): Check[] =>
	checksByDistance(assessment).filter(({ done, every, left }) => !done && (every === null || left !== null));

/** `, at 100 mi (43 mi to go)`: whole miles or kilometers, as an odometer shows them. */
function whenDue({ rule, due, left }: Check, { model, wording }: Assessment): string {
	const own = model.rulebook.rules.find(({ id }) => id === rule) ?? null;
	const unit = shownUnit('distance', wording.units);
	const whole = (distance: number) => write(toCanonical(Math.round(fromCanonical(distance, unit)), unit), unit);
	if (due === null) return left === null ? '' : `, in ${whole(left)}`;
	const toGo = left === null ? '' : left > 0 ? ` (${whole(left)} to go)` : ', due now';
	return `, at ${wording.show('due', due, own)}${toGo}`;
}
