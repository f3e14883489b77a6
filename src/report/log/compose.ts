import type { LogReport } from '../../audit/log-report.ts';
import type { Outcome } from '../../expressions/tree.ts';
import { logQuantities } from '../../log/all.ts';
import { isPerPull } from '../../log/results.ts';
import type { RecordedFigure, RecordedInPull } from '../../sheet/sheet.ts';
import { formatValue } from '../../wording/format.ts';
import { boostStep } from '../compose/boost-step.ts';
import { type Block, code, type Document, heading, type Inline, listed, paragraph, strong } from '../document.ts';
import { loggedAnswerWords } from './answers.ts';
import { composeFindings } from './findings.ts';
import { composeFit } from './fit.ts';
import { drawOverview } from './pictures.ts';
import { drawPull } from './pull-panels.ts';
import { writtenIn } from './units.ts';

/** A judged log as a document. `pictures`: whether they are seen where it is printed. */
export function composeLog(report: LogReport, pictures: boolean): Document {
	const { json } = report;
	const drawn = pictures ? [drawOverview(report), ...report.analysis.points.map(pull => drawPull(report, pull))] : [];
	const blocks = [
		heading(1, `Log of ${json.sheet}: ${json.file.name}`),
		paragraph(`${json.date}. swap-audit ${json.tool}, rules ${json.rules.slice(0, 12)}.`),
		paragraph(inShort(report)),
		...composeFindings(report),
		...answers(report),
		...composeFit(report),
		...boostStep({ steps: json.boost_steps, refused: json.boost_steps_refused }, report.wording),
		heading(2, 'What the engine did'),
		...episodes(report),
		...drawn.flatMap(figure => (figure ? [figure] : [])),
		...figures(report),
		...columns(report),
	];
	return { title: `Log of ${json.sheet}`, blocks };
}

function inShort({ json, analysis }: LogReport): string {
	const { rows, seconds, rate } = json.file;
	const pulls = json.episodes.filter(({ kind }) => kind === 'pull').length;
	const ambient = analysis.ambient ? '' : ' The pressure of the air outside is not known.';
	const quick = rate === null ? 'engine speed is not logged' : `engine speed ${rate.toFixed(1)} times a second`;
	return `${rows} rows over ${clockTime(seconds)}, ${quick}, ${pulls === 1 ? '1 pull' : `${pulls} pulls`}.${ambient}`;
}

const clockTime = (seconds: number): string => {
	const whole = Math.round(seconds);
	return whole < 60 ? `${whole} s` : `${Math.floor(whole / 60)} min ${whole % 60} s`;
};

/** What the log answers: before and after, and the lines of the audit that turn with it. */
function answers(report: LogReport): Block[] {
	const rows = report.json.answers.map((answer): Inline[] => {
		const { label, now, spread, before, by_hand, turns } = loggedAnswerWords(report, answer);
		const left = by_hand ? ', measured by hand and left as it is' : '';
		const give = spread === '' ? '' : `, give or take ${spread}`;
		return [
			strong(`${label}: `),
			`${now}${give}; before: ${before}${left}.`,
			...(turns === '' ? [] : [` Changes in the audit: ${turns}.`]),
		];
	});
	const how = paragraph('They go into the sheet with --apply, or one by one in the interview.');
	return rows.length === 0 ? [] : [heading(2, 'Answers that this log settles'), how, ...listed([], rows)];
}

function episodes({ json }: LogReport): Block[] {
	if (json.episodes.length === 0)
		return [paragraph('No idle, cruise or pull could be found: engine speed is missing or never moves.')];
	const pulls = json.episodes.filter(({ kind }) => kind === 'pull');
	const others = (['crank', 'idle', 'cruise', 'overrun'] as const).flatMap(kind => {
		const all = json.episodes.filter(episode => episode.kind === kind);
		const spent = all.reduce((sum, { from, to }) => sum + to - from, 0);
		return all.length === 0
			? []
			: [[`${kind}: ${all.length === 1 ? 'once' : `${all.length} times`}, ${clockTime(spent)} in all`]];
	});
	return [
		...listed([], others),
		...listed(
			[],
			pulls.map(({ number, from, to, gear, warm }) => [
				strong(`Pull ${number}: `),
				`at ${clockTime(from)}, ${(to - from).toFixed(1)} s${gear === null ? '' : `, gear ${gear}`}${warm ? '' : ', not warm'}`,
			]),
		),
	];
}

/** Every quantity that the log gives, a line each; of each pull in a row. */
function figures({ json, wording }: LogReport): Block[] {
	const rows = logQuantities.flatMap(quantity => {
		const entry = json.quantities[quantity.id];
		const list: readonly (RecordedFigure | RecordedInPull)[] =
			entry === undefined ? [] : isPerPull(entry) ? entry : [entry];
		const texts = list.flatMap(one => {
			if (one.value === null) return [];
			const text = formatValue(one.value as Outcome, { quantity: quantity as never }, wording.units);
			return text === null ? [] : ['pull' in one ? `pull ${one.pull} ${text}` : text];
		});
		return texts.length === 0 ? [] : [[code(quantity.id), ` ${texts.join(', ')}`] as Inline[]];
	});
	return listed([heading(2, 'The figures')], rows, 'small');
}

function columns(report: LogReport): Block[] {
	const { json, faults } = report;
	const how = { header: 'by its header', given: 'as given', asked: 'as you said', kept: 'as before' } as const;
	const rows = json.channels.map(({ channel, header, unit, by, low, high, lag }): Inline[] => {
		const own = writtenIn(report, channel);
		const range = channel === 'time' || low === null || high === null ? '' : `, ${own.show(low)} to ${own.show(high)}`;
		const late = lag === null ? '' : `, ${Math.round(lag * 1000)} ms late`;
		return [code(channel), ` ${header}, in ${unit || 'no unit'}, ${how[by as keyof typeof how]}${range}${late}`];
	});
	const broken =
		json.file.unread === 0 ? [] : [`${json.file.unread} lines could not be read, or not whole. The first:`, ...faults];
	return [
		...listed([heading(2, 'How the columns were read')], rows, 'small'),
		...listed(
			[paragraph('Decided on the way:')],
			json.notes.map(note => [note]),
		),
		...listed(
			[paragraph('Columns that were not used:')],
			json.unused.map(header => [header]),
			'small',
		),
		...listed(
			[paragraph('Lines:')],
			broken.map(line => [line]),
		),
	];
}
