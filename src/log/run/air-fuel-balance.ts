import { airFlow } from '../../physics/airflow.ts';
import { airGasConstant } from '../../physics/constants.ts';
import { percent } from '../../quantities/quantity.ts';
import { numberOf } from '../car.ts';
import { type Chunk, oncePerChunk } from '../chunk.ts';
import { deviationOf, exactly, lacking, type Measured, measured } from '../measured.ts';
import { airOf } from '../pull/air.ts';
import { stumbles as stumbling } from '../pull/driveline.ts';
import { fuelFlow } from '../pull/fuel.ts';
import type { Interval } from '../pull.ts';
import { runQuantity } from '../quantity.ts';
import { heldAt, within } from '../series.ts';
import { median, medianError } from '../statistics.ts';
import { Summary } from '../summary.ts';
import { heldAtEach } from '../ticks.ts';

type Regime = 'full' | 'cruise';

const needs = ['lambda_1', 'injector_pulse', 'air_flow'];

/** Measured lambda over air / (fuel x stoichiometric ratio), less 1, at each reading of lambda in an interval. */
function balanceErrors(chunk: Chunk, regime: Regime, [from, to]: Interval): number[] {
	const stoichiometric = numberOf(chunk.car, 'fuel.stoichiometric_ratio');
	if (stoichiometric === undefined) return [];
	const air = airOf({ ...chunk, of: id => within(chunk.of(id), from - 2, to) });
	const airAt = speedDensityAir(chunk);
	// Speed-density is one estimate of the air: it serves one regime only, so that it is never compared with itself.
	if (!air && regime === 'cruise') return [];
	const { time: times, value: lambdas } = within(chunk.of('lambda_1'), from, to);
	const speeds = heldAtEach(chunk.of('engine_speed'), times);
	const pulses = heldAtEach(chunk.of('injector_pulse'), times, 1);
	const flows = air && heldAtEach(air.air, times, 1);
	return Array.from(times, (time, at) => {
		const rpm = speeds[at]!;
		const flow = flows ? flows[at]! : airAt(time, rpm);
		const fuel = fuelFlow(chunk, pulses[at]!, rpm, acrossAt(chunk, time));
		return (lambdas[at]! * (fuel ?? Number.NaN) * stoichiometric) / flow - 1;
	}).filter(Number.isFinite);
}

/** kg/s of air at a time by the sheet's volumetric efficiency and the density in the manifold. */
function speedDensityAir({ car, of }: Chunk): (time: number, rpm: number) => number {
	const [share, displacement] = [numberOf(car, 'engine.volumetric_efficiency'), numberOf(car, 'engine.displacement')];
	return (time, rpm) => {
		const density = heldAt(of('manifold_pressure'), time) / (airGasConstant * heldAt(of('charge_temp'), time));
		if (share === undefined || displacement === undefined || !(density > 0) || !(rpm > 0)) return Number.NaN;
		return airFlow({ volumetricEfficiency: share, density, displacement, rpm });
	};
}

/** Pa across the injectors: the rail as logged, else as the sheet sets it, less the manifold's gauge pressure. */
function acrossAt({ car, of, ambient }: Chunk, time: number): number {
	const logged = heldAt(of('fuel_pressure'), time);
	const boost = heldAt(of('manifold_pressure'), time) - (ambient ?? Number.NaN);
	if (Number.isFinite(logged)) return logged - boost;
	const set = numberOf(car, 'fuel.pressure') ?? Number.NaN;
	return car.value('fuel.reference') === 'atmosphere' ? set - boost : set;
}

const intervals = (chunk: Chunk, regime: Regime): Interval[] =>
	regime === 'full'
		? chunk.pulls.flatMap(({ full }) => (full ? [full] : []))
		: chunk.episodes.filter(({ kind }) => kind === 'cruise').map(({ from, to }): Interval => [from + 1, to]);

const ofRegime = (regime: Regime) =>
	oncePerChunk(chunk => intervals(chunk, regime).flatMap(interval => balanceErrors(chunk, regime, interval)));
const errorsOf: Readonly<Record<Regime, (chunk: Chunk) => readonly number[]>> = {
	full: ofRegime('full'),
	cruise: ofRegime('cruise'),
};

/** Standard deviation of an error by the sensors: lambda, meter and pulse. */
const deviation = ({ declared: { sensor_error: error } }: Chunk): number =>
	Math.hypot(error.lambda, error.meter, error.pulse);

/** Collects the errors of some regimes. */
class BalanceError {
	readonly all = new Summary();
	private deviation = 0;
	private readonly regimes: readonly Regime[];

	constructor(regimes: readonly Regime[]) {
		this.regimes = regimes;
	}

	take(chunk: Chunk): void {
		this.deviation = deviation(chunk);
		for (const regime of this.regimes) for (const error of errorsOf[regime](chunk)) this.all.take(error);
	}

	result(): Measured {
		if (this.all.count < 5) return lacking(...needs);
		return measured(median(this.all.values), Math.hypot(this.deviation, medianError(this.all.values)));
	}
}

const balanceError = (id: string, regimes: readonly Regime[], where: string) =>
	runQuantity({
		id,
		kind: 'ratio',
		shown: percent,
		range: [-1, null],
		source: ['heywood'],
		formula: `median of lambda / (air / (fuel x stoichiometric ratio)) - 1 ${where}; air from the meter's curve, else as logged, else speed and density (at full only); fuel from pulse, dead time, rated flow, pressure across, number of injectors`,
		accumulator: () => new BalanceError(regimes),
	});

export const both = balanceError('log.air_fuel_ratio_error', ['full', 'cruise'], 'at full and in steady cruise');
export const full = balanceError('log.air_fuel_ratio_error_full', ['full'], 'at full');
export const cruise = balanceError('log.air_fuel_ratio_error_cruise', ['cruise'], 'in steady cruise');

export const disagreement = runQuantity({
	id: 'log.air_fuel_disagreement',
	kind: 'ratio',
	shown: percent,
	formula:
		'the greater of the errors at full and in cruise, as a figure over 0; 0 where it lies within two of its standard deviations. Both must be there',
	accumulator() {
		const [atFull, atCruise] = [new BalanceError(['full']), new BalanceError(['cruise'])];
		return {
			take(chunk) {
				atFull.take(chunk);
				atCruise.take(chunk);
			},
			result() {
				const [a, b] = [atFull.result(), atCruise.result()];
				if (typeof a.value !== 'number' || typeof b.value !== 'number') return lacking(...needs);
				const worse = Math.abs(a.value) > Math.abs(b.value) ? a : b;
				const off = Math.abs(worse.value as number);
				const deviation = deviationOf(worse);
				return measured(off >= 2 * deviation ? off : 0, deviation);
			},
		};
	},
});

export const cause = runQuantity({
	id: 'log.air_fuel_cause',
	kind: 'words',
	source: ['practice'],
	formula:
		'which of injector figure, dead time, rail pressure or meter curve fits how the error differs between cruise and full',
	accumulator() {
		const [atFull, atCruise] = [new BalanceError(['full']), new BalanceError(['cruise'])];
		let [rail, stumbles] = [false, false];
		return {
			take(chunk) {
				atFull.take(chunk);
				atCruise.take(chunk);
				rail ||= chunk.of('fuel_pressure').time.length > 0;
				stumbles ||= chunk.pulls.some(pull => Number(stumbling.measure(pull).value) >= 2);
			},
			result() {
				const [a, b] = [atFull.result().value, atCruise.result().value];
				if (typeof a !== 'number' || typeof b !== 'number') return exactly(undefined, ...needs);
				return exactly(
					`${causeOf(a, b, rail)}${stumbles && a > 0 ? '; it also stumbles, and a misfire reads lean' : ''}`,
				);
			},
		};
	},
});

/** By the pattern: the same everywhere, more with short pulses, or more with much air. */
function causeOf(atFull: number, atCruise: number, rail: boolean): string {
	if (Math.abs(atFull - atCruise) < 0.04)
		return 'the same at cruise and at full: the injector figure or the whole meter curve, which cannot be told apart here; flow one injector into a glass to tell';
	if (Math.abs(atCruise) > Math.abs(atFull)) return 'more at cruise, where pulses are short: the dead time';
	return rail
		? 'more at full, with the rail pressure logged: the top of the meter curve'
		: 'more at full: the rail pressure falls, or the top of the meter curve is off; log the rail pressure to tell';
}
