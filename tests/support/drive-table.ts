import { channels } from './recorded.ts';
import type { Drive } from './simulated-drive.ts';

/** A drive as a plain table in canonical units: a header a channel, known by its first name. */
export function driveTable({ time, channels: columns }: Pick<Drive, 'time' | 'channels'>): string {
	const declared = new Map(channels().map(channel => [channel.id, channel]));
	const ids = [...columns.keys()];
	const header = ids.map(id => {
		const { known, kind, special } = declared.get(id)!;
		const unit = special === 'trim' ? '%' : units[kind];
		return unit ? `${known[0]} (${unit})` : known[0]!;
	});
	const cell = (id: string, row: number): string => {
		const value = columns.get(id)![row]!;
		return Number.isNaN(value)
			? ''
			: String(Number((declared.get(id)!.special === 'trim' ? value * 100 : value).toPrecision(8)));
	};
	const rows = Array.from(time, (at, row) => [at.toFixed(3), ...ids.map(id => cell(id, row))].join(','));
	return [['Time (s)', ...header].join(','), ...rows, ''].join('\n');
}

/** The canonical units, as a header has them. */
const units: Readonly<Record<string, string | undefined>> = {
	pressure: 'Pa',
	'absolute-pressure': 'Pa',
	temperature: 'K',
	rotation: 'rpm',
	angle: 'deg',
	time: 's',
	voltage: 'V',
	velocity: 'm/s',
	'mass-flow': 'kg/s',
};
