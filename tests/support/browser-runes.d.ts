// The actions are tested without a page, but their types reach files that are written in runes.
/// <reference types="svelte" />
