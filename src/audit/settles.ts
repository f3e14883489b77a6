import { slotNamed } from '../graph/graph.ts';
import { reach } from '../graph/paths.ts';
import { namesRead } from '../rulebook/reads.ts';
import type { Question } from '../sheet/question.ts';
import { answerTo } from '../sheet/sheet.ts';
import type { Assessment } from './assess.ts';
import type { Finding } from './audit.ts';
import { sureEnough } from './unproved.ts';

/** The answers that a line which is not proved rests on, usual values before estimates: measured, they settle it. */
export function wouldSettle(finding: Finding, { model, state, sheet }: Assessment): Question[] {
	const { graph, judge, rulebook } = model;
	const rule = judge.rules.get(finding.rule)!;
	const read = [...namesRead(rule)].flatMap(name => graph.slotOf.get(name) ?? []);
	const behind = reach(read, slot => graph.feeds[slot]!);
	const usual = finding.assumed.map(name => name.split(' ')[0]!).filter(id => judge.usualBehind(id) === 'question');
	const rests = ({ id, of }: Question): boolean => {
		const known = answerTo(sheet, id)?.known ?? 'estimate';
		return (
			of.length > 0 && known === 'estimate' && state.given.has(slotNamed(graph, id)) && behind.has(slotNamed(graph, id))
		);
	};
	const { questions } = rulebook;
	const estimated = finding.sure !== null && finding.sure < sureEnough ? questions.filter(rests) : [];
	return [...new Set([...questions.filter(({ id }) => usual.includes(id)), ...estimated])];
}
