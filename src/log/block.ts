/** Ids of rules/channels.yaml: `engine_speed`, `lambda_1`. `time` is none of them: every block has it. */
type ChannelId = string;

/**
 * Some rows of a log, in the order of the file. A channel's array is as long as `time`, in the kept unit of its kind (SI;
 * rpm, deg), NaN where the row has no reading of it. The arrays belong to whoever takes the block; the next block has new ones.
 */
export interface Block {
	/** Seconds since the first row. Past midnight it goes on; where the logger's clock goes back, it goes back. */
	readonly time: Float64Array;
	readonly channels: ReadonlyMap<ChannelId, Float64Array>;
}
