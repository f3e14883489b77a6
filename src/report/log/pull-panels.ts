import type { LogReport } from '../../audit/log-report.ts';
import type { PullPoint, PullPoints } from '../../log/points.ts';
import type { RecordedInPull } from '../../sheet/sheet.ts';
import type { Figure } from '../document.ts';
import { type Mark, type Series, strips } from '../pictures/curves.ts';
import { round } from '../pictures/draw.ts';
import { type Written, writtenIn } from './units.ts';

/** What is drawn of a pull over engine speed: the first of each line that was logged. */
const panels: readonly (readonly (readonly [channel: string, title: string])[])[] = [
	[
		['boost', 'Boost'],
		['manifold_pressure', 'Manifold pressure'],
	],
	[['lambda_1', 'Lambda']],
	[
		['injector_duty', 'Injector duty'],
		['injector_pulse', 'Injector pulse'],
	],
	[['fuel_pressure', 'Fuel rail pressure']],
	[
		['meter_volts', 'Meter volts'],
		['air_flow', 'Air flow'],
	],
	[['knock_retard', 'Spark taken out for knock']],
	[['spark_advance', 'Spark advance']],
];

/** A pull as small panels over engine speed, what is expected behind what was read; null where nothing was logged. */
export function drawPull(report: LogReport, { pull, points }: PullPoints): Figure | null {
	const series = panels.flatMap((panel): Series[] => {
		const drawn = panel.find(([id]) => points.filter(({ channels }) => channels[id]).length >= 2);
		return drawn ? [seriesOf(report, pull, points, drawn)] : [];
	});
	if (series.length === 0) return null;
	const ends = series.map(({ title, points, band = [] }) => {
		const last = band.at(-1);
		const between = last ? `, expected at the end ${round(last[1])} to ${round(last[2])}` : '';
		return `${title} from ${round(points[0]![1])} to ${round(points.at(-1)![1])}${between}`;
	});
	const banded = series.some(({ band = [] }) => band.length > 1);
	const words = 'engine speed, rpm; shaded: where these answers and usual sensors put nine of ten';
	const axis = { title: banded ? words : 'engine speed, rpm', show: (speed: number) => String(speed), mark: null };
	return { is: 'figure', name: `pull-${pull}`, ...strips(`Pull ${pull}`, `${ends.join('; ')}.`, axis, series) };
}

function seriesOf(
	report: LogReport,
	pull: number,
	points: readonly PullPoint[],
	[id, title]: readonly [channel: string, title: string],
): Series {
	const own = writtenIn(report, id);
	const read = points.flatMap(({ speed, channels }) => {
		const reading = channels[id];
		return reading ? [[speed, reading.value] as const] : [];
	});
	const unit = own.show(read[0]![1]).replace(/^[-\d.]+ ?/, '');
	const expected = report.expected().get(pull)?.get(id) ?? [];
	const target = targetOf(report, pull, id);
	return {
		title: unit ? `${title}, ${unit}` : title,
		points: read.map(([speed, value]) => [speed, own.of(value)]),
		show: value => String(Number(value.toPrecision(3))),
		band: expected.map(({ speed, low, high }) => [speed, own.of(low), own.of(high)]),
		...(target === null ? {} : { level: levelAt(target, own) }),
	};
}

const levelAt = (target: number, own: Written): Mark => ({ at: own.of(target), title: 'target' });

/** Where a channel is to be at full load: lambda as the controller logs it or the sheet has it, boost and advance as the sheet has them. */
function targetOf({ json, targets }: LogReport, pull: number, id: string): number | null {
	if (id !== 'lambda_1') return targets.get(id) ?? null;
	const lambdas = json.quantities['log.lambda_meant'] as readonly RecordedInPull[];
	const value = lambdas.find(one => one.pull === pull)?.value;
	return typeof value === 'number' ? value : null;
}
