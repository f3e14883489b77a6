import { valueIn } from '../../graph/solve.ts';
import type { Stage } from '../../rulebook/rulebook.ts';
import { placeWords } from '../../wording/places.ts';
import { type Block, code, heading, type Inline, listed, paragraph, strong } from '../document.ts';
import type { ReportContext } from './context.ts';
import { checkLines } from './intervals.ts';
import { briefCautions, count, stageBy, upper } from './names.ts';
import { nextProcedures } from './procedures.ts';
import { nextWords } from './stage-lines.ts';
import type { Line } from './tasks.ts';
import { whileOut } from './while-out.ts';

/** As many ticks as a morning begins with, and as many cautions as somebody reads. */
const mostTicks = 8;
const mostCautions = 3;

/** Characters of a line of paper that are left after its marks. */
const room = 86;

const notYet: Readonly<Record<Stage, string>> = {
	install: 'leave it on the stand: all of this costs far more once it is in.',
	crank: 'do not turn the starter, not even for a moment.',
	fire: 'do not let it fire: fuel pump and coils stay unplugged when it is cranked.',
	move: 'do not drive it, not even across the yard; wheels chocked while it runs.',
	boost: 'no boost: stay out of the throttle, and leave the wastegate or bypass open.',
	tidy: 'nothing is held up; these lines wear or annoy.',
};

/**
 * The first page, enough for a morning at the car: what comes next, the first lines of it, what must wait, and the cautions
 * that belong to exactly these. At most 45 lines of paper.
 */
export function pageOne(context: ReportContext): Block[] {
	const { audit, sheet, model, next } = context;
	const stage = context.lines.find(lines => lines.stage === next);
	const lines = (stage && context.tasks.get(stage.stage)) ?? [];
	const first = lines.slice(0, mostTicks);
	const out = whileOut(context);
	const cautions = commonest(first).map(id => short(context, id));
	const always = ['law', 'licensed-help'].map(id => short(context, id));
	return [
		heading(1, cut(`Swap audit: ${sheet.name}`, room)),
		paragraph(`${audit.date}. swap-audit ${audit.tool}, rules ${audit.rules.slice(0, 12)}.`),
		...packLine(context),
		...(stage
			? [
					paragraph(strong('Next: '), `${nextWords(context.lines, context)}.`),
					...first.map(line => tick(line, context)),
					...(lines.length > first.length
						? [paragraph(`${count(lines.length - first.length, 'more line')} of this stage in the list below.`)]
						: []),
					...(out.length > 0
						? [paragraph(strong('Do also while it is out: '), `${cut(out.join('; '), 3 * room)}.`)]
						: []),
					paragraph(strong('Until they are done: '), waiting(stage.stage, context)),
				]
			: allReady(context)),
		...listed([], [...cautions, ...always]),
		paragraph(strong('When they are done: '), afterwards(context)),
		...(model.rulebook.rules.length > 0 ? oddAnswers(context) : []),
	];
}

/** The stages that a car has been through whatever the list says, by how far it is (build.stage). */
const past: Readonly<Record<string, readonly Stage[]>> = {
	'has-fired': ['crank', 'fire'],
	drives: ['crank', 'fire', 'move'],
};

function waiting(stage: Stage, context: ReportContext): string {
	if (past[String(valueIn(context.state, 'build.stage'))]?.includes(stage))
		return 'leave it parked with the engine off. It has run with these open.';
	return stage === 'boost' && stageBy(stage, context) === 'Before full load' ? 'no full throttle.' : notYet[stage];
}

/** A line in two: what it is, and where; its caution. What is too long for a line gives its place to the second one. */
function tick({ what, mark, cautions }: Line, { model }: ReportContext): Block {
	const place = placeWords[mark.access].split(/[,:]/)[0]!;
	const fits = what.length + place.length + 2 <= room;
	const titles = model.rulebook.cautions.filter(({ id }) => cautions.includes(id)).map(({ title }) => title);
	const brief = briefCautions(model.rulebook, cautions);
	const words = brief.length > 0 && String(brief[1]).length < room - 20 ? String(brief[1]) : `${titles.join('; ')}.`;
	const below: Inline[] = [
		...(fits ? [] : [titles.length > 0 ? `${place}. ` : `${place}.`]),
		...(titles.length > 0 ? [strong('Caution: '), cut(words, room - 10 - (fits ? 0 : place.length + 2))] : []),
	];
	return {
		is: 'task',
		text: [strong(`${cut(what, room)}${/[.?!]$/.test(what) ? '' : '.'}`), ...(fits ? [` ${place}.`] : [])],
		details: below.length > 0 ? [below] : [],
		close: true,
		mark,
	};
}

/** The cautions that most of these lines name; of equals, the one that the rulebook names first. */
function commonest(lines: readonly Line[]): string[] {
	const counts = new Map<string, number>();
	for (const { cautions } of lines) for (const id of cautions) counts.set(id, (counts.get(id) ?? 0) + 1);
	return [...counts]
		.sort(([, a], [, b]) => b - a)
		.slice(0, mostCautions)
		.map(([id]) => id);
}

function short({ model }: ReportContext, id: string): Inline[] {
	const { title, brief } = model.rulebook.cautions.find(caution => caution.id === id)!;
	return [strong(`${title}. `), brief];
}

/** What rule packs have put in place of answers, and what they changed: nobody looked at this car for it. */
const packLine = ({ audit }: ReportContext): Block[] =>
	listed(
		[],
		audit.packs.map(({ pack, prefills, changes }): Inline[] => [
			strong(`Rule pack ${cut(pack, 40)}: `),
			...(prefills.length > 0 ? ['stands in for ', ...codes(prefills), ', which proves nothing. '] : []),
			...(changes.length > 0 ? ['Changes ', ...codes(changes.map(({ rule }) => rule)), '.'] : []),
			...(prefills.length + changes.length === 0 ? ['used for nothing here.'] : []),
		]),
	);

const codes = (ids: readonly string[]): Inline[] => ids.flatMap((id, index) => [index > 0 ? ', ' : '', code(id)]);

function oddAnswers({ warnings }: ReportContext): Block[] {
	return warnings.length === 0
		? []
		: [paragraph(`${count(warnings.length, 'answer looks', 'answers look')} odd; "Odd answers" below names them.`)];
}

/** What goes on when nothing is held up any more: what to look at again, and when. */
function allReady(context: ReportContext): Block[] {
	const small = [...context.tasks.values()].flat().length;
	const open = `${count(small, 'line holds', 'lines hold')} nothing up and ${small === 1 ? 'is' : 'are'} in the list below.`;
	return [
		paragraph(strong('Next: '), `${nextWords(context.lines, context)}. Check again:`),
		{ is: 'items', items: checkLines(context) },
		...(small > 0 ? [paragraph(upper(open))] : []),
	];
}

function afterwards(context: ReportContext): string {
	if (context.next === null) return 'note what you read on the drive, and recheck after each change.';
	const day = nextProcedures(context).length > 0 ? '; then read "The day itself" below before you start' : '';
	return `put what you found into the sheet and recheck${day}.`;
}

/** Free text and long titles held to a line. */
function cut(text: string, most: number): string {
	if (text.length <= most) return text;
	const end = text.lastIndexOf(' ', most - 3);
	return `${text.slice(0, end > most / 2 ? end : most - 3)}...`;
}
