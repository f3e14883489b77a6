import type { Assessment } from '../../audit/assess.ts';
import { valueIn } from '../../graph/solve.ts';
import type { Caution, Rulebook, Stage } from '../../rulebook/rulebook.ts';
import { stageTitles } from '../../wording/stages.ts';
import type { Inline } from '../document.ts';
import { strong } from '../document.ts';

/** A stage in words. Without boost nothing waits for boost, and what stands there is settled before full load. */
export const stageBy = (stage: Stage, { state }: Pick<Assessment, 'state'>): string =>
	stage === 'boost' && valueIn(state, 'boost.kind') === 'none' ? 'Before full load' : stageTitles[stage];

/** A count with its noun. */
export function count(number: number, one: string, many = `${one}s`): string {
	return `${number} ${number === 1 ? one : many}`;
}

/** Two figures as a span, `12.4 to 12.9 V`: a unit that both have is written once. */
export function rangeText(low: string, high: string): string {
	const [, number = low, unit] = /^(\S+)( .+)$/.exec(low) ?? [];
	return unit !== undefined && high.endsWith(unit) ? `${number} to ${high}` : `${low} to ${high}`;
}

export const lower = (title: string): string => title.charAt(0).toLowerCase() + title.slice(1);
export const upper = (title: string): string => title.charAt(0).toUpperCase() + title.slice(1);

/** Cautions in one line each, at the work that they touch; nothing when there are none. */
export function briefCautions({ cautions }: Rulebook, ids: readonly Caution['id'][]): Inline[] {
	const words = cautions.filter(({ id }) => ids.includes(id)).map(({ title, brief }) => `${title}. ${brief}`);
	return words.length > 0 ? [strong('Caution: '), words.join(' ')] : [];
}

/** The names of cautions on a line that they touch; nothing when there are none. */
export function cautionWords({ cautions }: Rulebook, ids: readonly Caution['id'][]): Inline[] {
	const titles = cautions.filter(({ id }) => ids.includes(id)).map(({ title }) => title);
	return titles.length > 0 ? [strong('Caution: '), `${titles.join('; ')}.`] : [];
}
