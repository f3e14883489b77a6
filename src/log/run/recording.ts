import { newIn } from '../chunk.ts';
import { exactly, lacking, measured } from '../measured.ts';
import { runQuantity } from '../quantity.ts';
import { within } from '../series.ts';

export const pulls = runQuantity({
	id: 'log.pulls',
	kind: 'count',
	formula: 'how many pulls were found: foot down for 1.5 s while engine speed rises by 1000 rpm in one gear',
	accumulator() {
		let [count, foot] = [0, false];
		return {
			take({ pulls: found, demand, logged }) {
				count += found.length;
				foot = logged.has('engine_speed') && demand !== 'manifold';
			},
			// Where manifold pressure stands in for the foot, none found does not say that there was none.
			result: () => (count > 0 || foot ? measured(count) : lacking('pedal')),
		};
	},
});

export const numbers = runQuantity({
	id: 'log.pull_numbers',
	kind: 'list',
	formula: 'the numbers of the pulls, as text, from 1',
	accumulator() {
		const found: string[] = [];
		return {
			take: ({ pulls: views }) => {
				for (const { episode } of views) found.push(String(episode.number));
			},
			result: () => exactly(found),
		};
	},
});

export const source = runQuantity({
	id: 'log.demand',
	kind: 'words',
	formula:
		'what stands for the foot: the pedal, else a throttle that moves enough, else manifold pressure near ambient with engine speed rising',
	accumulator() {
		let found: string | undefined;
		return {
			take: ({ demand }) => {
				found = demand;
			},
			result: () => exactly(found),
		};
	},
});

export const rate = runQuantity({
	id: 'log.rate',
	kind: 'ratio',
	unit: '1/s',
	formula: 'new readings of engine speed a second',
	accumulator() {
		let [count, seconds] = [0, 0];
		return {
			take(chunk) {
				const { time } = newIn(chunk, 'engine_speed');
				count += time.length;
				seconds += chunk.span[1] - chunk.span[0];
			},
			// From the first to the last there is one gap less than there are readings.
			result: () => (seconds > 0 && count > 0 ? exactly((count - 1) / seconds) : exactly(undefined, 'engine_speed')),
		};
	},
});

export const jumps = runQuantity({
	id: 'log.clock_jumps',
	kind: 'count',
	formula: 'how often the clock went back, or stood open for more than 2 s while the engine ran',
	accumulator() {
		let count = 0;
		return {
			take({ jumps, ticks, declared: { running }, span: [from, to] }) {
				const runs = (at: number) => {
					const near = within({ time: ticks.time, value: ticks.speed }, at - 6, at + 6);
					const before = within(near, 0, at - 1e-6).value.at(-1);
					const after = within(near, at, at + 6).value[0];
					return before !== undefined && after !== undefined && Math.min(before, after) > running.speed;
				};
				for (const { at, by } of jumps) if (at >= from && at < to && (by < 0 || runs(at))) count++;
			},
			result: () => measured(count),
		};
	},
});
