import { type Block, heading, paragraph, strong } from '../document.ts';
import type { ReportContext } from './context.ts';
import { count, lower, stageBy } from './names.ts';
import { readinessWords } from './readiness.ts';
import { isEmpty, openIn, type StageLines } from './stage-lines.ts';
import { linesOf } from './tasks.ts';
import { whileOut } from './while-out.ts';

/** The list: everything up to the next stage whole, each later stage behind its title with the number of its lines. */
export function list(told: ReportContext): Block[] {
	const filled = told.lines.filter(lines => !isEmpty(lines));
	const at = told.lines.findIndex(({ stage }) => stage === told.next);
	const isNear = (lines: StageLines) => at < 0 || told.lines.indexOf(lines) <= at;
	const near = filled.filter(isNear).flatMap(lines => [heading(3, stageBy(lines.stage, told)), ...whole(lines, told)]);
	const later = filled
		.filter(lines => !isNear(lines))
		.map(
			(lines): Block => ({
				is: 'fold',
				text: stageBy(lines.stage, told),
				note: openIn(lines),
				blocks: whole(lines, told),
			}),
		);
	const nothing = paragraph(
		'Nothing is known to be wrong, and nothing that could hurt waits for an answer. That is not proof: it is what the answers say.',
	);
	return [
		heading(2, 'The list'),
		{
			is: 'items',
			items: readinessWords(told).map(row => [
				strong(`${stageBy(row.stage, told)}: `),
				// Fewer than are listed: what only wears or annoys holds nothing up, and one answer may settle many lines.
				/^\d/.test(row.words) ? `held up by ${row.words}` : row.words,
			]),
		},
		...(filled.length > 0 ? near : [nothing]),
		...(later.length > 0 ? [heading(3, 'Later'), ...later] : []),
	];
}

function whole(lines: StageLines, told: ReportContext): Block[] {
	const { waits } = lines;
	const words = `${count(waits, 'more line waits', 'more lines wait')} here for answers that other lines ask for.`;
	const during = [...new Set(lines.during.map(({ title }) => lower(title)))].join('; ');
	const out = lines.stage === 'install' ? whileOut(told).join('; ') : '';
	return [
		...linesOf(lines, told).map(({ task }) => task),
		...(out ? [paragraph(strong('Do also while it is out: '), `${out}. Their lines are under the later stages.`)] : []),
		...(waits > 0 ? [paragraph(words)] : []),
		...(during ? [paragraph(strong('To be proved during it: '), `${during}. The procedure says what to read.`)] : []),
	];
}
