import { describe, expect, it } from 'vitest';
import type { Analysis } from '../../src/log/analyze.ts';
import { analyzed, unknownCar } from '../support/analyzed.ts';
import { simulateDrive } from '../support/simulated-drive.ts';

const episodes = ({ episodes: found }: Analysis) =>
	found.map(({ kind, from, to, number, warm }) => [kind, Math.round(from), Math.round(to), number, warm]);

describe('a drive that was simulated', () => {
	const drive = simulateDrive();
	const analysis = analyzed(drive);

	it('is cut into what was driven', () => {
		const kinds = analysis.episodes.map(({ kind }) => kind);
		expect(kinds.filter(kind => kind !== 'overrun')).toEqual([
			'key-on',
			'crank',
			'idle',
			'cruise',
			'idle',
			'pull',
			'pull',
			'idle',
			'key-on',
		]);
		for (const [index, { from, to }] of analysis.episodes.filter(({ kind }) => kind === 'pull').entries()) {
			expect(Math.abs(from - drive.pulls[index]!.from)).toBeLessThan(0.1);
			expect(Math.abs(to - drive.pulls[index]!.to)).toBeLessThan(0.1);
		}
	});

	it('shows of each pull what was true, within its band', () => {
		const holds = (id: string, truth: (pull: (typeof drive.pulls)[number]) => number) => {
			for (const [index, figure] of analysis.pulls.get(id)!.entries()) {
				expect(figure.low, id).toBeLessThanOrEqual(truth(drive.pulls[index]!));
				expect(figure.high, id).toBeGreaterThanOrEqual(truth(drive.pulls[index]!));
			}
		};
		holds('log.boost_peak', ({ boostPeak }) => boostPeak);
		holds('log.lambda_leanest', ({ lambdaLeanest }) => lambdaLeanest);
		holds('log.rail_lowest', ({ railLowest }) => railLowest);
	});

	it('is the same whether judged at once or part by part', () => {
		const parts = analyzed(drive, unknownCar, { most: 40_000 });
		// Episodes are cut where a part ends only if they fill all of it.
		expect(episodes(parts)).toEqual(episodes(analysis));
		for (const id of ['log.boost_peak', 'log.lambda_leanest', 'log.rail_at_full', 'log.oil_drop'])
			expect(parts.pulls.get(id), id).toEqual(analysis.pulls.get(id));
		for (const id of [
			'log.idle_speed',
			'log.charging_volts',
			'log.cruise_trim_1',
			'log.clock_jumps',
			'log.crank_speed',
		])
			expect(parts.run.get(id), id).toEqual(analysis.run.get(id));
	});

	it('does not depend on the size of the blocks', () => {
		expect(analyzed(drive, unknownCar, { rows: 137 })).toEqual(analysis);
	});

	it('finds how late the lambda sensor is', () => {
		for (const seed of [1, 2, 3, 4]) {
			const { lag } = analyzed(simulateDrive({ seed }));
			expect(lag).toBeGreaterThan(0.05);
			expect(lag).toBeLessThan(0.45);
		}
	});

	it('counts new readings, not repeated cells', () => {
		const polled = analyzed(simulateDrive({ polled: true, rate: 50 }));
		// 24 channels by turns at 50 rows a second: each about twice a second.
		for (const [id, { count }] of polled.samples) {
			expect(count / polled.seconds, id).toBeGreaterThan(1.4);
			expect(count / polled.seconds, id).toBeLessThan(2.6);
		}
	});
});

it('the swing of an idle counts the time at each speed: a logger that writes changes only sees no blips', () => {
	const drive = simulateDrive({ rate: 20, seed: 4, pulls: 0 });
	// A fiftieth of the time 150 rpm more; on a coarse tachometer nothing else ever changes.
	const blipped = drive.channels.get('engine_speed')!.map((rpm, row) => {
		if (rpm < 600 || rpm > 1000) return rpm;
		return 800 + (row % 7) - 3 + (drive.time[row]! % 10 < 0.2 ? 150 : 0);
	});
	const [fine, coarse] = [1, 25].map(step => {
		const written = blipped.map(rpm => Math.round(rpm / step) * step);
		const speed = written.map((rpm, row) => (step > 1 && rpm === written[row - 1] ? Number.NaN : rpm));
		const log = { time: drive.time, channels: new Map([...drive.channels, ['engine_speed', speed] as const]) };
		return analyzed(log).run.get('log.idle_swing')!.value as number;
	});
	expect(fine).toBeLessThan(10);
	expect(coarse).toBeLessThanOrEqual(25);
});
