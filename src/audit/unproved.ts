import type { Judge, Verdict } from '../rulebook/judge.ts';
import { isSerious } from './stages.ts';

/** Of a hundred cases so many must come out the same before a line counts as proved. */
export const sureEnough = 0.9;

/**
 * Whether a line that holds is not proved: nobody found out what it rests on. Where people get hurt no usual value of a
 * question will do; where the engine or the drive home is at stake one will, if the line holds over its spread. What a pack
 * says proves neither. `sure` is null without draws.
 */
export function isUnproved({ verdict, rule, assumed }: Verdict, sure: number | null, judge: Judge): boolean {
	if (verdict !== 'holds' || !isSerious(rule)) return false;
	if (sure !== null && sure < sureEnough) return true;
	const usual = assumed.map(name => judge.usualBehind(name));
	return usual.some(from => from === 'pack' || (from === 'question' && rule.harm === 'person'));
}
