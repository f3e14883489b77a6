import { Box, Text } from 'ink';
import { useEffect, useSyncExternalStore } from 'react';
import { compose } from './frame.ts';
import { frameOf } from './reduce.ts';
import type { Store } from './store.ts';
import { theme } from './theme.ts';

/** Draws the store's app, a line a row. `ready` is called once the first frame stands. */
export function Screen({ store, ready }: { readonly store: Store; readonly ready: () => void }) {
	const { app, columns, rows } = useSyncExternalStore(store.subscribe, store.read);
	useEffect(() => {
		ready();
	}, [ready]);
	return (
		<Box flexDirection="column" width={columns}>
			{compose(frameOf(app, columns - 1), columns, rows).map(({ text, look }, index) => (
				// biome-ignore lint/suspicious/noArrayIndexKey: lines have no identity but their place
				<Text key={index} wrap="truncate" {...theme[look]}>
					{text === '' ? ' ' : text}
				</Text>
			))}
		</Box>
	);
}
