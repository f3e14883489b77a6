import type { Assessment } from '../../audit/assess.ts';
import type { Change } from '../../audit/audit.ts';
import { type Block, code, heading, listed, paragraph, strong } from '../document.ts';
import { subjectWords } from './list.ts';

/** What an audit line came to, in words, in the order in which they are told. */
export const changeWords: Readonly<Record<Change['change'], string>> = {
	settled: 'Settled',
	new: 'New',
	worse: 'Worse',
	better: 'Better, not there yet',
	'no-longer-tellable': 'Can no longer be told',
	still: 'Still open',
};

/** Since last time: what is settled, new, worse, better, still open; which figures moved. */
export function since({ audit, model, wording }: Assessment): Block[] {
	if (!audit.since) return [];
	const { date, changes, numbers } = audit.since;
	// A rule that has gone since has no title any more.
	const title = (rule: string) => model.rulebook.rules.find(({ id }) => id === rule)?.title ?? rule;
	const about = (change: Change) => (change.subject === null ? '' : ` (${subjectWords(change, { model })})`);
	const groups = (Object.keys(changeWords) as Change['change'][]).flatMap((kind): Block[] => {
		const own = changes.filter(({ change }) => change === kind);
		const items = own.map(change => [
			`${title(change.rule)}${about(change)}${change.by === 'rules' ? ', because the rules changed' : ''}.`,
		]);
		return listed([paragraph(strong(`${changeWords[kind]}: ${own.length}`))], items);
	});
	const moved = numbers.map(({ name, before, after }) => [
		code(name),
		` ${wording.show(name, before)} before, ${wording.show(name, after)} now.`,
	]);
	const told = [...groups, ...listed([paragraph(strong('Figures that moved'))], moved)];
	return [
		heading(2, 'Since last time'),
		paragraph(`Compared with the audit of ${date}.${told.length > 0 ? '' : ' Nothing changed.'}`),
		...told,
	];
}
