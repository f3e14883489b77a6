import type { Stage } from '../../rulebook/rulebook.ts';

/** The stages in words. */
export const before: Readonly<Record<Stage, string>> = {
	crank: 'Before it cranks',
	fire: 'Before it fires',
	move: 'Before it moves',
	boost: 'Before it makes boost',
	tidy: 'The rest',
};

/** A count with its noun. */
export function count(number: number, one: string, many = `${one}s`): string {
	return `${number} ${number === 1 ? one : many}`;
}
