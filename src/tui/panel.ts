import type { Figures } from '../interview/figures.ts';
import type { App } from './app.ts';
import { clip, joined, type Line, line, lines } from './text.ts';
import { bar, glyphs } from './theme.ts';

/** The figures of a section that are known, with what the last answer moved. */
function figureLines({ model, figures: now, before }: App, section: string): string[] {
	if (!now) return [];
	const { wording } = now;
	const ids = model.rulebook.sections.find(({ id }) => id === section)?.figures ?? [];
	return ids.flatMap(id => {
		const value = now.value(id);
		if (typeof value !== 'number') return [];
		const was = before?.value(id);
		const moved =
			typeof was === 'number' && Math.abs(was - value) > 1e-9 * Math.abs(value)
				? ` (was ${wording.show(id, was)})`
				: '';
		return [`${wording.label(id)} ${wording.show(id, value)}${moved}`];
	});
}

/** The first limit to give out, as a sentence. */
function firstLimit({ limits, wording }: Figures): string[] {
	const lowest = limits.find(({ value, bound }) => value !== null && bound !== 'above');
	return lowest ? [`First to give out: ${lowest.title} at ${wording.show(lowest.limit, lowest.value!)}`] : [];
}

const failing = ({ fails }: Figures): string[] => (fails > 0 ? [`${fails} to do so far`] : []);

/** What we know so far, below the question. One line when narrow. */
export function panel(app: App, section: string, width: number): Line[] {
	if (!app.figures) return [];
	const all = [...figureLines(app, section), ...firstLimit(app.figures), ...failing(app.figures)];
	if (all.length === 0) return [];
	if (width < 72) return [line(clip(all[0]!, width), 'quiet')];
	const rule = line(glyphs(app.appearance).line.repeat(width), 'quiet');
	return [rule, ...all.map(text => line(clip(text, width), 'quiet'))];
}

const mostBars = 8;

/** A bar of a limit's share of the target; the mark in it is the target. */
function limitBar(share: number, most: number, length: number, app: App): string {
	const target = Math.min(length - 1, Math.round(length / most));
	const whole = bar(Math.min(share, most) / most, length, app.appearance);
	return whole.slice(0, target) + glyphs(app.appearance).edge + whole.slice(target + 1);
}

/** The same in a second pane: the figures, then each limit as a bar against the boost that is wanted. */
export function figurePane(app: App, section: string, width: number): Line[] {
	const { figures } = app;
	if (!figures) return [];
	const shownLines = figureLines(app, section).flatMap(text => lines(text, width));
	const placed = figures.limits.filter(({ value, of_target }) => value !== null && of_target !== null);
	const most = Math.max(1.2, Math.min(2, Math.max(...placed.map(({ of_target }) => of_target!))));
	const bars = placed.slice(0, mostBars).flatMap(({ limit, title, value, of_target, bound }) => {
		const shown = `${bound === 'above' ? 'over ' : ''}${figures.wording.show(limit, value!)}`;
		const length = Math.max(6, width - shown.length - 1);
		const enough = of_target! >= 1;
		return [
			line(clip(title, width), 'quiet'),
			joined(
				{ text: limitBar(of_target!, most, length, app), look: enough ? 'good' : 'odd' },
				{ text: ` ${shown}`, look: 'plain' },
			),
		];
	});
	return [
		...shownLines,
		...failing(figures).map(text => line(text, 'bad')),
		...(bars.length > 0
			? [line(''), ...firstLimit(figures).flatMap(text => lines(text, width, 'title')), ...bars]
			: []),
	];
}
