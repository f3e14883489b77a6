import { type Block, heading, paragraph, strong } from '../document.ts';
import type { ReportContext } from './context.ts';
import { count, lower, stageBy } from './names.ts';
import { readinessWords } from './readiness.ts';
import { isEmpty, openIn, type StageLines } from './stage-lines.ts';
import { whileOut } from './while-out.ts';

/** The list: everything up to the next stage whole, each later stage behind its title with the number of its lines. */
export function list(context: ReportContext): Block[] {
	const filled = context.lines.filter(lines => !isEmpty(lines));
	const at = context.lines.findIndex(({ stage }) => stage === context.next);
	const isNear = (lines: StageLines) => at < 0 || context.lines.indexOf(lines) <= at;
	const near = filled
		.filter(isNear)
		.flatMap(lines => [heading(3, stageBy(lines.stage, context)), ...whole(lines, context)]);
	const later = filled
		.filter(lines => !isNear(lines))
		.map(
			(lines): Block => ({
				is: 'fold',
				text: stageBy(lines.stage, context),
				note: openIn(lines),
				blocks: whole(lines, context),
			}),
		);
	const nothing = paragraph(
		'Nothing is known to be wrong, and nothing that could hurt waits for an answer. That is not proof: it is what the answers say.',
	);
	return [
		heading(2, 'The list'),
		{
			is: 'items',
			items: readinessWords(context).map(row => [
				strong(`${stageBy(row.stage, context)}: `),
				// Fewer than are listed: what only wears or annoys holds nothing up, and one answer may settle many lines.
				/^\d/.test(row.words) ? `held up by ${row.words}` : row.words,
			]),
		},
		...(filled.length > 0 ? near : [nothing]),
		...(later.length > 0 ? [heading(3, 'Later'), ...later] : []),
	];
}

function whole(lines: StageLines, context: ReportContext): Block[] {
	const tasks = context.tasks.get(lines.stage);
	if (!tasks) return [];
	const { waits } = lines;
	const words = `${count(waits, 'more line waits', 'more lines wait')} here for answers that other lines ask for.`;
	const during = [...new Set(lines.during.map(({ title }) => lower(title)))].join('; ');
	const out = lines.stage === 'install' ? whileOut(context).join('; ') : '';
	return [
		...tasks.map(({ task }) => task),
		...(out ? [paragraph(strong('Do also while it is out: '), `${out}. Their lines are under the later stages.`)] : []),
		...(waits > 0 ? [paragraph(words)] : []),
		...(during ? [paragraph(strong('To be proved during it: '), `${during}. The procedure says what to read.`)] : []),
	];
}
