import type { Figures } from '../interview/figures.ts';
import type { Rulebook } from '../rulebook/rulebook.ts';
import { limitWords } from '../wording/as-fine-as-band.ts';
import type { App } from './app.ts';
import { lastOf } from './last-of.ts';
import { clip, joined, type Line, line, lines } from './text.ts';
import { type Appearance, bar, glyphs } from './theme.ts';

/** The figures of a section that are known, with what the last answer moved. */
function figureLines({ sections }: Rulebook, now: Figures, before: Figures | null, section: string): string[] {
	const { wording } = now;
	const ids = sections.find(({ id }) => id === section)?.figures ?? [];
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
export function panel({ model, figures, before, appearance }: App, section: string, width: number): Line[] {
	return figures ? linesBelow(model.rulebook, figures, before, appearance, section, width) : [];
}

/** Kept as long as the figures stand: a key moves none of them. */
const linesBelow = lastOf(
	(
		rulebook: Rulebook,
		figures: Figures,
		before: Figures | null,
		appearance: Appearance,
		section: string,
		width: number,
	): Line[] => {
		const all = [...figureLines(rulebook, figures, before, section), ...firstLimit(figures), ...failing(figures)];
		if (all.length === 0) return [];
		if (width < 72) return [line(clip(all[0]!, width), 'quiet')];
		const rule = line(glyphs(appearance).line.repeat(width), 'quiet');
		return [rule, ...all.map(text => line(clip(text, width), 'quiet'))];
	},
);

const mostBars = 8;

/** A bar of a limit's share of the target; the mark in it is the target. */
function limitBar(share: number, most: number, length: number, appearance: Appearance): string {
	const target = Math.min(length - 1, Math.round(length / most));
	const whole = bar(Math.min(share, most) / most, length, appearance);
	return whole.slice(0, target) + glyphs(appearance).edge + whole.slice(target + 1);
}

/** The same in a second pane: the figures, then each limit as a bar against the boost that is wanted. */
export function figurePane({ model, figures, before, appearance }: App, section: string, width: number): Line[] {
	return figures ? linesBeside(model.rulebook, figures, before, appearance, section, width) : [];
}

const linesBeside = lastOf(
	(
		rulebook: Rulebook,
		figures: Figures,
		before: Figures | null,
		appearance: Appearance,
		section: string,
		width: number,
	): Line[] => {
		const shownLines = figureLines(rulebook, figures, before, section).flatMap(text => lines(text, width));
		const placed = figures.limits.filter(({ value, of_target }) => value !== null && of_target !== null);
		const most = Math.max(1.2, Math.min(2, Math.max(...placed.map(({ of_target }) => of_target!))));
		const bars = placed.slice(0, mostBars).flatMap(rung => {
			const { title, of_target } = rung;
			const shown = limitWords(figures.wording, rung.limit, { ...rung, value: rung.value! });
			const length = Math.max(6, width - shown.length - 1);
			const enough = of_target! >= 1;
			return [
				line(clip(title, width), 'quiet'),
				joined(
					{ text: limitBar(of_target!, most, length, appearance), look: enough ? 'good' : 'odd' },
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
	},
);
