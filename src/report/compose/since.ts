import type { Assessment } from '../../audit/assess.ts';
import type { Change } from '../../audit/audit.ts';
import { type Block, code, heading, listed, paragraph, strong } from '../document.ts';
import { subjectWords } from './subjects.ts';

/** What an audit line came to, in words, in the order in which they are printed. */
export const changeWords: Readonly<Record<Change['change'], string>> = {
	settled: 'Settled',
	new: 'New',
	worse: 'Worse',
	better: 'Better, not there yet',
	'no-longer-tellable': 'Can no longer be judged',
	still: 'Still open',
};

/** An audit line that changed: its title, the part of the build, and whether the rules did it. A rule that has gone since has no title any more. */
export function changeTitle(change: Change, model: Assessment['model']): string {
	const title = model.judge.rules.get(change.rule)?.title ?? change.rule;
	const about = change.subject === null ? '' : ` (${subjectWords(change, { model })})`;
	return `${title}${about}${change.by === 'rules' ? ', because the rules changed' : ''}`;
}

/** Since last time: what is settled, new, worse, better, still open; which figures moved. */
export function since({ audit, model, wording }: Assessment): Block[] {
	if (!audit.since) return [];
	const { date, logs, changes, numbers } = audit.since;
	const groups = (Object.keys(changeWords) as Change['change'][]).flatMap((kind): Block[] => {
		const own = changes.filter(({ change }) => change === kind);
		const items = own.map(change => [`${changeTitle(change, model)}.`]);
		return listed([paragraph(strong(`${changeWords[kind]}: ${own.length}`))], items);
	});
	const moved = numbers.map(({ name, before, after }) => [
		code(name),
		` ${wording.show(name, before)} before, ${wording.show(name, after)} now.`,
	]);
	const logged = logs.map(({ name, date, answers }) => [
		strong(`Log ${name} of ${date}. `),
		answers.length === 0
			? 'No answer was taken from it.'
			: `It settled: ${answers.map(id => wording.label(id)).join(', ')}.`,
	]);
	const blocks = [...listed([], logged), ...groups, ...listed([paragraph(strong('Figures that moved'))], moved)];
	return [
		heading(2, 'Since last time'),
		paragraph(`Compared with the audit of ${date}.${blocks.length > 0 ? '' : ' Nothing changed.'}`),
		...blocks,
	];
}
