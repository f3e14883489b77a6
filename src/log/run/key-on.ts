import { during } from '../chunk.ts';
import { runQuantity } from '../quantity.ts';
import { sensorErrors } from '../sensor-errors.ts';
import { mapped, type Readings, within } from '../series.ts';
import { median } from '../statistics.ts';
import { medianOf } from './median-of.ts';

/** s after which pump and manifold have settled with the key on. */
const settling = 1;

/** Without the first second, in which the pump primes and the manifold fills. */
const settled = ({ time, value }: Readings): Readings =>
	within({ time, value }, (time[0] ?? 0) + settling, time.at(-1) ?? 0);

export const fuelPressure = runQuantity({
	id: 'log.key_on_fuel_pressure',
	kind: 'pressure',
	sensor: 'fuel_pressure',
	formula: 'median rail pressure with the key on and the engine still, the first second left out',
	accumulator: () =>
		medianOf(chunk => during(chunk, 'key-on', 'fuel_pressure').map(settled), sensorErrors.pressure, ['fuel_pressure']),
});

export const manifold = runQuantity({
	id: 'log.key_on_pressure',
	kind: 'absolute-pressure',
	sensor: 'manifold_pressure',
	unit: 'Pa',
	formula: 'median manifold pressure with the key on and the engine still, the first second left out',
	accumulator: () =>
		medianOf(chunk => during(chunk, 'key-on', 'manifold_pressure').map(settled), sensorErrors.manifold, [
			'manifold_pressure',
		]),
});

export const manifoldError = runQuantity({
	id: 'log.key_on_pressure_error',
	kind: 'pressure',
	range: [null, null],
	formula:
		"median manifold pressure with the key on and the engine still, less ambient as logged, else less that of the sheet's altitude",
	accumulator: () =>
		medianOf(
			chunk => {
				const logged = median(chunk.of('ambient_pressure').value);
				const altitude =
					chunk.car.value('build.altitude') === undefined ? Number.NaN : chunk.car.value('air.ambient_pressure');
				const ambient = Number.isFinite(logged) ? logged : typeof altitude === 'number' ? altitude : Number.NaN;
				if (!Number.isFinite(ambient)) return [];
				return during(chunk, 'key-on', 'manifold_pressure').map(found =>
					mapped(settled(found), pressure => pressure - ambient),
				);
			},
			() => 1000,
			['manifold_pressure', 'ambient_pressure'],
		),
});
