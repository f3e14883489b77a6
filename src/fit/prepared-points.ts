import { cycleTime } from '../physics/injector.ts';
import { type Place, placeOf } from './filling.ts';
import type { FitLog, FitPoint, Reading } from './fit-log.ts';
import { modelDiscrepancy } from './terms.ts';

/** A point of a log that can be compared, with all that can be said of it once. */
export interface Prepared {
	readonly point: FitPoint;
	readonly log: number;
	readonly place: Place;
	readonly lambdas: readonly ('lambda_1' | 'lambda_2')[];
	/** Its charge temperature counts as a reading of the model's: the last of its pull. */
	readonly judgesCharge: boolean;
	/** The model computes the rail there, on its nominal values. */
	readonly knowsRail: boolean;
	/** Of an injection, s: as it was read, or from duty. */
	readonly pulse: Reading | undefined;
	/** One standard deviation: of the manifold's pressure as a share, of lambda, of what each channel is compared with. */
	readonly ofPressure: number;
	readonly ofLambda: number;
	readonly ofRail: number;
	readonly ofVolts: number;
	readonly ofFlow: number;
	readonly ofPumpVolts: number;
}

/** Share of a pressure sensor's full scale beyond which it counts as saturated. */
const saturation = 0.97;

/**
 * The points of all logs that can be compared.
 *
 * @param best rpm of best power; `top`: Pa, the manifold sensor's full scale (NaN: not known)
 */
export function preparedPoints(logs: readonly FitLog[], best: number, top: number, inCharge: boolean): Prepared[] {
	return logs.flatMap(({ points }, log) =>
		points.flatMap((point, at): Prepared[] => {
			const { read } = point;
			const pressure = read.manifold_pressure;
			const lambdas = (['lambda_1', 'lambda_2'] as const).filter(bank => read[bank]);
			if (!pressure || lambdas.length === 0 || !(best > 0) || pressure.value > saturation * top) return [];
			const last = points[at + 1]?.pull !== point.pull;
			const judgesCharge = last && inCharge && read.charge_temp !== undefined;
			const ofPressure = pressure.deviation / pressure.value;
			const ofLambda = Math.sqrt(lambdas.reduce((sum, bank) => sum + read[bank]!.deviation ** 2, 0)) / lambdas.length;
			const deviation = (channel: string, of: (read: Reading) => number) =>
				read[channel] ? of(read[channel]) : Number.NaN;
			return [
				{
					point,
					log,
					place: placeOf(point.speed, best),
					lambdas,
					judgesCharge,
					knowsRail: true,
					pulse: read.injector_pulse ?? pulseFromDuty(read.injector_duty, point.speed),
					ofPressure,
					ofLambda,
					ofRail: deviation('fuel_pressure', rail => Math.hypot(modelDiscrepancy.fuel_pressure, rail.deviation)),
					ofVolts: deviation('meter_volts', ({ value, deviation }) =>
						Math.hypot(modelDiscrepancy.meter_volts * value, deviation, (value * ofPressure) / 2),
					),
					ofFlow: deviation('air_flow', ({ value, deviation }) =>
						Math.hypot(modelDiscrepancy.air_flow * value, deviation, value * ofPressure),
					),
					ofPumpVolts: deviation('pump_volts', volts => Math.hypot(modelDiscrepancy.pump_volts, volts.deviation)),
				},
			];
		}),
	);
}

function pulseFromDuty(duty: Reading | undefined, speed: number): Reading | undefined {
	if (!duty) return undefined;
	const cycle = cycleTime(speed);
	return { value: duty.value * cycle, deviation: duty.deviation * cycle };
}
