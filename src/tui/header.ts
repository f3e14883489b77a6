import { aboutWords, progress, roundLeft } from '../interview/queue.ts';
import type { State } from '../interview/state.ts';
import type { App } from './app.ts';
import { lastOf } from './last-of.ts';
import { clip, joined, type Line } from './text.ts';
import { bar } from './theme.ts';

/** The first line of every question: where it is, and how much of the way is gone, how long the round still takes. */
export function headLine(app: App, title: string, width: number): Line {
	const { done, of, left } = whereIn(app.interview!);
	const time = left && width >= 48 ? `, ${aboutWords(left.seconds, width < 72)} left` : '';
	const counted = ` ${done} of ${of}${time}`;
	const length = width >= 90 ? 20 : width >= 36 ? 8 : 0;
	const room = width - counted.length - length;
	return joined(
		{ text: `${clip(title, room - 1).padEnd(room)}`, look: 'title' },
		{ text: bar(of === 0 ? 1 : done / of, length, app.appearance), look: 'good' },
		{ text: counted, look: 'quiet' },
	);
}

const whereIn = lastOf((state: State) => ({ ...progress(state), left: roundLeft(state) }));
