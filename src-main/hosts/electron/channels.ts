/** The channels between the page's bridge and the host: calls and wishes to save one way, names of menu actions the other. */
export const CALL_CHANNEL = 'toeboard-call';
export const MENU_CHANNEL = 'toeboard-menu';
export const SAVE_CHANNEL = 'toeboard-save';
