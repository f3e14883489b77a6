import { psi } from '../../physics/constants.ts';
import { percent } from '../../quantities/quantity.ts';
import { lacking, type Measured, measured, plainly } from '../measured.ts';
import type { PullView } from '../pull.ts';
import { inPull } from '../quantity.ts';
import { mapped, type Readings } from '../series.ts';
import { median, runningMedian } from '../statistics.ts';
import { heldHigh, heldLow } from './tools.ts';

function ofOil(pull: PullView, measure: (oil: Readings) => Measured): Measured {
	const oil = pull.in('oil_pressure');
	return oil.time.length < 3 ? lacking('oil_pressure') : measure(oil);
}

/** What a hot engine should have, Pa at rpm: 10 psi per 1000 rpm, and no more than 45 psi is asked. Common practice. */
export const oilFloor = (rpm: number): number => Math.min((10 * rpm) / 1000, 45) * psi;

export const overFloor = inPull({
	id: 'log.oil_over_floor',
	kind: 'pressure',
	sensor: 'oil_pressure',
	range: [null, null],
	source: ['practice'],
	formula:
		'the least, held for 0.3 s and three readings, of oil pressure less the lower of 10 psi per 1000 rpm and 45 psi',
	measure: pull =>
		ofOil(pull, oil =>
			measured(
				heldLow(
					pull,
					mapped(oil, (pressure, time) => pressure - oilFloor(pull.speedAt(time))),
				),
				pull.declared.sensor_error.pressure,
				['oil_pressure'],
			),
		),
});

export const drop = inPull({
	id: 'log.oil_drop',
	kind: 'ratio',
	shown: percent,
	formula:
		'the most, held for 0.3 s and three readings, by which oil pressure lay under the highest it had had at a lower engine speed; a flat top is none',
	measure: pull =>
		ofOil(pull, oil => {
			const smooth = runningMedian(oil);
			let top = 0;
			const under = mapped(smooth, pressure => {
				top = Math.max(top, pressure);
				return 1 - pressure / top;
			});
			return measured(heldHigh(pull, under), 0.02, ['oil_pressure']);
		}),
});

export const perThousand = inPull({
	id: 'log.oil_pressure_per_1000',
	kind: 'list',
	formula: 'a list of [rpm, Pa per 1000 rpm] every 500 rpm: median oil pressure within 250 rpm over rpm / 1000',
	measure: pull =>
		ofOil(pull, oil => {
			const bins = new Map<number, number[]>();
			for (const [index, time] of oil.time.entries()) {
				const bin = 500 * Math.round(pull.speedAt(time) / 500);
				if (bin > 0) bins.set(bin, [...(bins.get(bin) ?? []), oil.value[index]!]);
			}
			const list = [...bins].filter(([, all]) => all.length >= 3).sort(([a], [b]) => a - b);
			return plainly(list.map(([rpm, all]) => [rpm, (1000 * median(all)) / rpm]));
		}),
});
