/** The channels between the page's bridge and the host: calls and wishes to save one way, names of menu actions the other.
 * Of files that were opened with the program the page is informed as of a menu's action, and takes them by a call. */
export const CALL_CHANNEL = 'toeboard-call';
export const MENU_CHANNEL = 'toeboard-menu';
export const SAVE_CHANNEL = 'toeboard-save';
export const OPENED_CHANNEL = 'toeboard-opened';

/** What the page hears on the menu's channel when a file waits for it. */
export const FILE_WAITS = 'take-opened-file';
