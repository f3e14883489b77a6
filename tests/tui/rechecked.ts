import type { App } from '../../src/tui/app.ts';
import { reduce } from '../../src/tui/reduce.ts';

/**
 * A recheck gone through to its end: what is named is typed, a list to be ticked anew is none of these, all else is kept.
 * Throws with the question that leads no further, such as one that a named build has no answer to.
 */
export function recheckedBy(app: App, answers: Readonly<Record<string, string>>, seen: string[] = []): App {
	let now = app;
	for (let left = 60; now.interview?.at; left--) {
		const { at } = now.interview;
		seen.push(at);
		for (const text of [...(answers[at] ?? '')]) now = reduce(now, { key: 'text', text });
		now = reduce(now, { key: 'enter' });
		if (now.interview?.at === at && now.interview.said?.kind === 'problem')
			now = [...Array.from({ length: 12 }, () => 'down' as const), 'enter' as const].reduce(
				(app, key) => reduce(app, { key }),
				now,
			);
		if (now.interview?.at === at || left === 0) throw new Error(`the recheck stays at ${at}`);
	}
	return now;
}
