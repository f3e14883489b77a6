import { Box, Text } from 'ink';
import { useEffect, useSyncExternalStore } from 'react';
import { compose } from './frame.ts';
import { frameOf } from './reduce.ts';
import type { Store } from './store.ts';
import type { Line } from './text.ts';
import { type Appearance, styleOf } from './theme.ts';

/** Draws the store's app, a line a row. `ready` is called once the first frame stands. */
export function Screen({ store, ready }: { readonly store: Store; readonly ready: () => void }) {
	const { app, columns, rows } = useSyncExternalStore(store.subscribe, store.read);
	useEffect(() => {
		ready();
	}, [ready]);
	return (
		<Box flexDirection="column" width={columns}>
			{compose(frameOf(app, columns - 1), columns, rows, app.appearance).map((line, index) => (
				// biome-ignore lint/suspicious/noArrayIndexKey: lines have no identity but their place
				<Row key={index} line={line} appearance={app.appearance} />
			))}
		</Box>
	);
}

function Row({ line, appearance }: { readonly line: Line; readonly appearance: Appearance }) {
	const { text, look, parts } = line;
	return (
		<Text wrap="truncate" {...(parts ? {} : styleOf(look, appearance))}>
			{parts
				? parts.map((part, index) => (
						// biome-ignore lint/suspicious/noArrayIndexKey: parts have no identity but their place
						<Text key={index} {...styleOf(part.look, appearance)}>
							{part.text}
						</Text>
					))
				: text === ''
					? ' '
					: text}
		</Text>
	);
}
