import type { LogReport } from '../../audit/log-report.ts';
import type { Outcome } from '../../expressions/tree.ts';
import type { Kind } from '../../units/kinds.ts';
import { shownUnit } from '../../units/shown.ts';
import { write } from '../../units/write.ts';
import { formatValue } from '../../wording/format.ts';
import { type Block, heading, type Inline, listed, paragraph, strong } from '../document.ts';

/** The model fitted to the log: what moved, what is still open, or why the log fits no car of these answers. */
export function composeFit(report: LogReport): Block[] {
	const { fit } = report.json;
	if (!fit) return [];
	const out = fit.left_out.map(({ log, look_at }): Inline[] => [
		strong(`${log}: `),
		look_at.map(id => nameOf(report, id)).join(', '),
	]);
	const title = heading(2, 'Fitted to this log');
	if (fit.misfit) {
		const look = fit.misfit.look_at.map((id): Inline[] => [nameOf(report, id)]);
		const why =
			'This log fits no car of these answers: a sensor, an answer or the log itself is off. Nothing rests on it. Look first at:';
		return [
			title,
			paragraph(look.length > 0 ? why : `${why} the answers that this log was compared by.`),
			...listed([], look),
		];
	}
	if (!fit.applied)
		return [
			title,
			paragraph('The model could not be fitted to this log: repeated tries do not agree. Nothing rests on it.'),
		];
	const moved = fit.moved.map(({ id, before, after }): Inline[] => {
		const [was, is] = [before, after].map(([low, middle, high]) => {
			const show = (value: number) => written(report, id, value);
			return `${show(middle)} (${show(low)} to ${show(high)})`;
		});
		return [strong(`${nameOf(report, id)}: `), `${is}; before: ${was}`];
	});
	const open = fit.unsettled.map(({ limit, inputs, measure }): Inline[] => [
		strong(`${report.model.rulebook.limits[limit]?.title ?? limit}: `),
		inputs.map(id => nameOf(report, id)).join(', '),
		measure === null ? '' : `. Measure next: ${nameOf(report, measure)}`,
	]);
	return [
		title,
		paragraph(`Worth ${fit.effective} independent draws. Nine of ten lie within the figures in brackets.`),
		...listed([paragraph('Left out, for they fit no car of these answers. Look first at:')], out),
		...listed([paragraph('What it moved:')], moved),
		...listed(
			[paragraph('A sensor that is off by less than this looks the same as the car itself: not detectable.')],
			fit.detects.map(({ id, least }): Inline[] => [
				`${id.slice('sensor: '.length).replaceAll('_', ' ')}: ${written(report, id, least)}`,
			]),
			'small',
		),
		...listed([paragraph('What leaves most of each limit open:')], open, 'small'),
	];
}

function nameOf({ model }: LogReport, id: string): string {
	if (id.startsWith('sensor: ')) return `what the sensor of ${id.slice('sensor: '.length).replaceAll('_', ' ')} is off`;
	const question = model.rulebook.questions.find(one => one.id === id);
	return question?.label ?? model.quantities.find(one => one.id === id)?.label ?? id;
}

function written({ model, wording }: LogReport, id: string, value: number): string {
	const question = model.rulebook.questions.find(one => one.id === id);
	const quantity = model.quantities.find(one => one.id === id);
	if (question) return formatValue(value as Outcome, { question }, wording.units) ?? '';
	if (quantity) return formatValue(value as Outcome, { quantity }, wording.units) ?? '';
	const kind: Kind = /fuel_pressure/.test(id) ? 'pressure' : /temp$/.test(id) ? 'temperature-difference' : 'ratio';
	return kind !== 'ratio' ? write(value, shownUnit(kind, wording.units)) : `${(100 * value).toFixed(1)} %`;
}
