import type { Chunk } from './chunk.ts';
import type { Declared } from './declared.ts';

type Errors = Pick<Declared, 'sensor_error'>;

/** V: what an instrument and its input are off together. */
export const voltsError = ({ sensor_error: error }: Errors, volts: number): number =>
	volts * Math.hypot(error.volts, error.volts_apart);

/** V: what two inputs of one instrument are off each other. What the instrument is off cancels. */
export const voltsDifferenceError = ({ sensor_error: error }: Errors, volts: number): number =>
	volts * Math.SQRT2 * error.volts_apart;

/** The errors of sensors as standard deviations at a value, in its unit. */
export const sensorErrors = {
	none: () => 0,
	pressure: (_: number, { declared }: Chunk) => declared.sensor_error.pressure,
	manifold: (value: number, { declared }: Chunk) => value * declared.sensor_error.manifold,
	volts: (value: number, { declared }: Chunk) => voltsError(declared, value),
	temperature: (_: number, { declared }: Chunk) => declared.sensor_error.temperature,
} as const;
