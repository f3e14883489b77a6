import type { Question } from '../sheet/question.ts';
import type { Stage } from '../sheet/stage.ts';

/** When an answer can be had. */
export type When = 'now' | 'when it cranks' | 'when it runs' | 'when it drives' | 'during the pull';

const from: Readonly<Record<Stage, When>> = {
	install: 'now',
	crank: 'when it cranks',
	fire: 'when it runs',
	move: 'when it drives',
	boost: 'during the pull',
	tidy: 'when it drives',
};

/** When an answer can be had: what no stage has to come before for is there now. */
export const whenAnswerable = ({ known_from }: Pick<Question, 'known_from'>): When =>
	known_from === null ? 'now' : from[known_from];
