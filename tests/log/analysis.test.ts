import { describe, expect, it } from 'vitest';
import type { Analysis } from '../../src/log/analysis.ts';
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

describe('what is counted', () => {
	it('is every new reading from the first row on, and the rate is by the gaps between them', () => {
		const time = Float64Array.from({ length: 101 }, (_, row) => row / 10);
		const speed = time.map(at => 800 + 40 * at);
		const { samples, rate, run } = analyzed({ time, channels: new Map([['engine_speed', speed]]) });
		expect(samples.get('engine_speed')).toEqual({ count: 101, low: 800, high: 1200 });
		expect(rate).toBeCloseTo(10, 9);
		expect(run.get('log.rate')!.value).toBeCloseTo(10, 5);
	});

	it('is boost lost over 1000 rpm, however quickly the engine passes them', () => {
		// Foot off for 5 s, then 700 rpm a second up to 5500; over 3600 rpm boost falls by 2 psi in 1000 rpm.
		const psi = 6894.757;
		const time = Float64Array.from({ length: 220 }, (_, row) => row / 20);
		const into = (at: number) => Math.min(5, at - 5);
		const rpm = (at: number) => (at < 5 ? 2000 + 3 * at : 2000 + 700 * into(at));
		const boost = (at: number) => 8 * Math.min(1, into(at) / 0.8) - (2 * Math.max(0, rpm(at) - 3600)) / 1000;
		const { pulls } = analyzed({
			time,
			channels: new Map([
				['engine_speed', time.map(rpm)],
				['pedal', time.map(at => (at < 5 || at > 10 ? 0.1 + 0.001 * at : 1))],
				['boost', time.map(at => (at < 5 ? -8 : boost(at)) * psi)],
			]),
		});
		const [fall] = pulls.get('log.boost_fall_late')!;
		expect((fall!.value as number) / psi).toBeCloseTo(2, 1);
	});
});
