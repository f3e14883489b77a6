import { newIn } from '../chunk.ts';
import { measured } from '../measured.ts';
import { runQuantity } from '../quantity.ts';
import { sensorErrors } from '../sensor-errors.ts';
import { medianOf } from './median-of.ts';

export const pressure = runQuantity({
	id: 'log.ambient_pressure',
	kind: 'absolute-pressure',
	unit: 'Pa',
	formula:
		"pressure of the air outside: as logged, else the manifold's with the engine still, else that of the sheet's altitude",
	accumulator() {
		let [found, error] = [Number.NaN, 0];
		return {
			take({ ambient, declared }) {
				found = ambient ?? found;
				error = declared.sensor_error.manifold;
			},
			result: () => measured(found, found * error, ['ambient_pressure', 'manifold_pressure']),
		};
	},
});

export const temperature = runQuantity({
	id: 'log.ambient_temp',
	kind: 'temperature',
	formula: 'median temperature of the air outside',
	accumulator: () => medianOf(chunk => [newIn(chunk, 'ambient_temp')], sensorErrors.temperature, ['ambient_temp']),
});
