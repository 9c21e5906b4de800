import { getActions } from '../../../actions/actions.ts';
import { onMac, strokeText } from '../../../actions/keys.ts';
import type { FindGroup } from '../find-group.ts';

/** Whatever can be done now, with its keys. */
export function foundActions(): FindGroup {
  const actions = getActions();
  const mac = onMac();
  return {
    id: 'actions',
    title: 'Actions',
    entries: () =>
      actions.list
        .filter((action) => action.id !== 'find' && action.enabled())
        .map((action) => ({
          id: action.id,
          name: action.name,
          keys: action.strokes.map((stroke) => strokeText(stroke, mac)).join(' or '),
          run: () => actions.perform(action.id),
        })),
  };
}
