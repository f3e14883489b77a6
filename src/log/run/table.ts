import { fresh } from '../chunk.ts';
import { lacking, measured, plainly } from '../measured.ts';
import { inRun } from '../quantity.ts';
import { within } from '../series.ts';

export const pulls = inRun({
	id: 'log.pulls',
	kind: 'count',
	formula: 'how many pulls were found: foot down for 1.5 s while engine speed rises by 1000 rpm in one gear',
	gather() {
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

export const numbers = inRun({
	id: 'log.pull_numbers',
	kind: 'list',
	formula: 'the numbers of the pulls, as text, from 1',
	gather() {
		const found: string[] = [];
		return {
			take: ({ pulls: views }) => {
				for (const { episode } of views) found.push(String(episode.number));
			},
			result: () => plainly(found),
		};
	},
});

export const source = inRun({
	id: 'log.demand',
	kind: 'words',
	formula:
		'what stands for the foot: the pedal, else a throttle that moves enough, else manifold pressure near ambient with engine speed rising',
	gather() {
		let found: string | undefined;
		return {
			take: ({ demand }) => {
				found = demand;
			},
			result: () => plainly(found),
		};
	},
});

export const rate = inRun({
	id: 'log.rate',
	kind: 'ratio',
	unit: '1/s',
	formula: 'new readings of engine speed a second',
	gather() {
		let [count, seconds] = [0, 0];
		return {
			take(chunk) {
				const { time } = fresh(chunk, 'engine_speed');
				count += time.length;
				seconds += chunk.span[1] - chunk.span[0];
			},
			// From the first to the last there is one gap less than there are readings.
			result: () => (seconds > 0 && count > 0 ? plainly((count - 1) / seconds) : plainly(undefined, 'engine_speed')),
		};
	},
});

export const jumps = inRun({
	id: 'log.clock_jumps',
	kind: 'count',
	formula: 'how often the clock went back, or stood open for more than 2 s while the engine ran',
	gather() {
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

export const knockMoved = inRun({
	id: 'log.knock_proved',
	kind: 'yes-no',
	formula:
		'yes where knock retard was ever anything but 0, or the sheet has the knock sensor fitted and wired; else not known',
	gather() {
		let [moved, logged, fitted] = [false, false, false];
		return {
			take(chunk) {
				const { value } = fresh(chunk, 'knock_retard');
				logged ||= value.length > 0;
				moved ||= value.some(one => one !== 0);
				fitted ||= chunk.car.value('sensors.knock') === 'fitted-wired';
			},
			result: () => plainly(logged && (moved || fitted) ? true : undefined, logged ? 'sensors.knock' : 'knock_retard'),
		};
	},
});

export const knockPulls = inRun({
	id: 'log.knock_pulls',
	kind: 'count',
	formula: 'in how many pulls 1 deg or more was taken out for knock',
	gather() {
		let [count, logged] = [0, false];
		return {
			take({ pulls: views }) {
				for (const view of views) {
					const { value } = view.in('knock_retard');
					logged ||= value.length > 0;
					if (value.some(one => one >= 1 - 1e-9)) count++;
				}
			},
			result: () => (logged ? measured(count) : plainly(undefined, 'knock_retard')),
		};
	},
});
