import { psi } from '../../physics/constants.ts';
import { percent } from '../../quantities/quantity.ts';
import { exactly, lacking, type Measured, measured } from '../measured.ts';
import type { PullView } from '../pull.ts';
import { pullQuantity } from '../quantity.ts';
import { mapped, type Readings } from '../series.ts';
import { runningMedian } from '../statistics.ts';
import { heldHigh, heldLow, mediansBySpeed } from './readings.ts';

function ofOil(pull: PullView, measure: (oil: Readings) => Measured): Measured {
	const oil = pull.in('oil_pressure');
	return oil.time.length < 3 ? lacking('oil_pressure') : measure(oil);
}

/** The oil pressure that a hot engine needs, Pa at rpm: 10 psi per 1000 rpm, up to 45 psi. Common practice. */
export const oilFloor = (rpm: number): number => Math.min((10 * rpm) / 1000, 45) * psi;

export const overFloor = pullQuantity({
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

export const drop = pullQuantity({
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

export const perThousand = pullQuantity({
	id: 'log.oil_pressure_per_1000',
	kind: 'list',
	formula: 'a list of [rpm, Pa per 1000 rpm] every 500 rpm: median oil pressure within 250 rpm over rpm / 1000',
	measure: pull =>
		ofOil(pull, oil => {
			const points = Array.from(oil.value, (pressure, index) => [pull.speedAt(oil.time[index]!), pressure] as const);
			const list = mediansBySpeed(points).filter(([speed]) => speed > 0);
			return exactly(list.map(([speed, pressure]) => [speed, (1000 * pressure) / speed]));
		}),
});
