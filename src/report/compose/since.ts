import type { Assessment } from '../../audit/assess.ts';
import type { Change } from '../../audit/audit.ts';
import { type Block, heading, paragraph, strong } from '../document.ts';

const words: Readonly<Record<Change['change'], string>> = {
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
	const title = (rule: string) => model.rulebook.rules.find(({ id }) => id === rule)?.title ?? rule;
	const groups = (Object.keys(words) as Change['change'][]).flatMap((kind): Block[] => {
		const own = changes.filter(({ change }) => change === kind);
		if (own.length === 0) return [];
		const items = own.map(({ rule, subject, by }) => [
			`${title(rule)}${subject ? ` (${subject})` : ''}${by === 'rules' ? ', because the rules changed' : ''}.`,
		]);
		return [paragraph(strong(`${words[kind]}: ${own.length}`)), { is: 'items', items }];
	});
	const moved = numbers.map(({ name, before, after }) => [
		`${name}: ${wording.show(name, before)} before, ${wording.show(name, after)} now.`,
	]);
	const figures: Block[] =
		moved.length > 0 ? [paragraph(strong('Figures that moved')), { is: 'items', items: moved }] : [];
	const same = paragraph(`Nothing changed since ${date}.`);
	return [heading(2, `Since ${date}`), ...(groups.length + figures.length > 0 ? [...groups, ...figures] : [same])];
}
