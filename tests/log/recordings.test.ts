import { describe, expect, it } from 'vitest';
import { median } from '../../src/log/statistics.ts';
import { analyzed } from '../support/analyzed.ts';
import { recorded } from '../support/recorded.ts';
import { recording, recordingBytes, recordingsAreHere } from '../support/recordings.ts';

/**
 * Outside check: the Automotive OBD-II Dataset (Karlsruhe Institute of Technology, RADAR4KIT, DOI 10.5445/IR/1000085073): four
 * drives of a sound car in traffic. Its description shows a cold start, halts and no full load. Skipped where it is not at hand.
 */
describe.skipIf(!recordingsAreHere)('four recordings of a sound car', () => {
	const drives = recordingsAreHere ? [1, 2, 3, 4].map(number => analyzed(recording(number))) : [];
	const value = (id: string) => drives.map(({ run }) => run.get(id)!.value);

	it('have no pull, and idles in all', () => {
		expect(value('log.pulls')).toEqual([0, 0, 0, 0]);
		const idles = drives.flatMap(({ episodes }) => episodes.filter(({ kind }) => kind === 'idle'));
		expect(idles.length).toBeGreaterThanOrEqual(16);
		expect(idles.length).toBeLessThanOrEqual(24);
	});

	it('idle steadily: the worst swing, warm or not, is a trial figure of 41 rpm', () => {
		const swings = [1, 2, 3, 4].flatMap((number, index) => {
			const { time, channels } = recording(number);
			return drives[index]!.episodes.filter(({ kind }) => kind === 'idle').map(({ from, to }) => {
				const inside = [...channels.get('engine_speed')!]
					.filter((_, row) => time[row]! - time[0]! >= from && time[row]! - time[0]! <= to)
					.sort((a, b) => a - b);
				return inside[Math.floor(0.95 * (inside.length - 1))]! - inside[Math.floor(0.05 * (inside.length - 1))]!;
			});
		});
		expect(Math.max(...swings)).toBeCloseTo(41, -1);
	});

	it('have new readings of each channel about once a second', () => {
		for (const { samples, seconds } of drives) {
			const rates = [...samples.values()].map(({ count }) => count / seconds);
			expect(median(rates)).toBeGreaterThan(0.75);
			expect(median(rates)).toBeLessThan(1.25);
		}
	});

	it('show no dead channel and no jump of the clock', () => {
		expect(value('log.dead_channels')).toEqual([[], [], [], []]);
		expect(value('log.clock_jumps')).toEqual([0, 0, 0, 0]);
	});

	it('know the engine standing still, and the foot', () => {
		expect(drives.map(({ demand }) => demand)).toEqual(['pedal', 'pedal', 'pedal', 'pedal']);
		// The car stops its engine at halts in the fourth.
		expect(drives[3]!.episodes.filter(({ kind }) => kind === 'key-on').length).toBeGreaterThanOrEqual(2);
	});

	it('are read by the program as they are read plainly, every channel by its header', async () => {
		for (const number of [1, 2, 3, 4]) {
			const plain = recording(number);
			const { taken, totals, time, readings } = await recorded(recordingBytes(number));
			expect(totals.unread).toBe(0);
			expect(Object.keys(readings).sort()).toEqual([...plain.channels.keys()].sort());
			expect(Object.values(taken).every(column => column.endsWith('|header'))).toBe(true);
			const read = {
				time: Float64Array.from(time),
				channels: new Map(Object.entries(readings).map(([id, values]) => [id, Float64Array.from(values)])),
			};
			const [own, other] = [analyzed(read), drives[number - 1]!];
			expect(own.episodes.map(({ kind }) => kind)).toEqual(other.episodes.map(({ kind }) => kind));
			for (const id of ['log.idle_speed', 'log.coolant_highest', 'log.idle_pressure'])
				expect(own.run.get(id)!.value ?? 0).toBeCloseTo(Number(other.run.get(id)!.value ?? 0), 6);
		}
	});
});
