/** Our own small signs, drawn in a 20 by 20 field with a line of 1.6. Each is one path. */
export const ICONS = {
  undo: 'M4 8h8.5a4 4 0 0 1 0 8H8M4 8l3.5-3.5M4 8l3.5 3.5',
  redo: 'M16 8H7.5a4 4 0 0 0 0 8H12M16 8l-3.5-3.5M16 8l-3.5 3.5',
  play: 'M6.5 4.5v11l9-5.5z',
  stop: 'M6 6h8v8H6z',
  drawer: 'M3 5h14v10H3zM8 5v10',
  close: 'M5 5l10 10M15 5L5 15',
  cross: 'M5 5l10 10M15 5L5 15',
  tick: 'M4 10.5l4 4 8-9',
  attention: 'M10 4v7.5M10 15v.5',
  more: 'M4.5 10h.01M10 10h.01M15.5 10h.01',
  add: 'M10 4v12M4 10h12',
  find: 'M9 14.5a5.5 5.5 0 1 0 0-11 5.5 5.5 0 0 0 0 11zM13 13l4 4',
  bin: 'M4 6h12M8 6V4h4v2M5.5 6l1 10.5h7l1-10.5',
  history: 'M10 6v4.5l3 1.5M3.5 10a6.5 6.5 0 1 0 2-4.7M3.5 3.5v3h3',
  arrange: 'M3.5 4h5v5h-5zM11.5 4h5v5h-5zM3.5 12h5v5h-5zM11.5 12h5v5h-5z',
  bring: 'M10 3v9M6.5 9l3.5 3.5L13.5 9M4 16h12',
  send: 'M10 13V4M6.5 7L10 3.5 13.5 7M4 16h12',
  back: 'M12.5 4.5L7 10l5.5 5.5',
  open: 'M7.5 4.5L13 10l-5.5 5.5',
  ground: 'M10 3.5a6.5 6.5 0 1 0 0 13zM10 3.5a6.5 6.5 0 0 1 0 13M6.8 6.2v7.6M8.4 4.4v11.2',
  unfold: 'M4.5 7.5L10 13l5.5-5.5',
} as const;

export type IconName = keyof typeof ICONS;
