import type { Stage } from '../rulebook/rulebook.ts';

/** By when a thing has to be settled, in words. */
export const stageTitles: Readonly<Record<Stage, string>> = {
	install: 'Before it goes in',
	crank: 'Before it cranks',
	fire: 'Before it fires',
	move: 'Before it moves',
	boost: 'Before it makes boost',
	tidy: 'The rest',
};
