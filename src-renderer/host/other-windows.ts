import type { Call, CallHost, Request } from '../../src-main/api/contract.ts';

/** What a call changes, as other windows show it. */
export type Touched = 'settings' | 'shop' | 'variant' | 'survey' | 'shelf' | 'tickets' | 'everything';

/** What was changed in another window; of a variant or a survey, which one. */
export interface ChangeElsewhere {
  readonly touched: Touched;
  /** Of the variant, or of the survey's car. */
  readonly id?: string;
}

/** What each call of the contract changes; the compiler asks for that of a new one. */
const TOUCHES: Readonly<Record<Call, Touched | null>> = {
  'program.about': null,
  'settings.get': null,
  'settings.set': 'settings',
  'shop.read': null,
  'customer.add': 'shop',
  'customer.change': 'shop',
  'car.add': 'shop',
  'car.begin': 'shop',
  'car.change': 'shop',
  'car.duplicate': 'shop',
  'car.move': 'shop',
  'survey.read': null,
  'survey.save': 'survey',
  'points.readCsv': null,
  'survey.exportCsv': null,
  'survey.readCsv': null,
  'variant.add': 'shop',
  'variant.open': null,
  'variant.save': 'variant',
  'variant.rename': 'variant',
  'variant.duplicate': 'shop',
  'variant.move': 'shop',
  'history.list': null,
  'history.read': null,
  'history.restore': 'variant',
  'bin.put': 'shop',
  'bin.list': null,
  'bin.restore': 'shop',
  'bin.empty': 'shop',
  'shelf.list': null,
  'shelf.add': 'shelf',
  'shelf.change': 'shelf',
  'shelf.remove': 'shelf',
  'shelf.restore': 'shelf',
  'shelf.importCsv': 'shelf',
  'shelf.exportCsv': null,
  'file.import': 'shop',
  'file.exportVariant': null,
  'file.exportCar': null,
  'copies.list': null,
  'copies.look': null,
  'copies.restore': 'everything',
  'output.start': null,
  'output.progress': null,
  'output.cancel': null,
  'ticket.list': null,
  'ticket.add': 'tickets',
  'ticket.save': 'tickets',
  'ticket.makeCar': 'shop',
  'ticket.print': null,
  'demonstration.list': null,
  'demonstration.take': 'shop',
  'demonstration.read': null,
};

const CHANNEL = 'toeboard-changes';

function idIn(name: Call, input: unknown): { id?: string } {
  const { id, carId, variantId } = input as { id?: unknown; carId?: unknown; variantId?: unknown };
  const found = name === 'survey.save' ? carId : name === 'history.restore' ? variantId : id;
  return typeof found === 'string' ? { id: found } : {};
}

let opened: BroadcastChannel | undefined;

/** One for the page, as a channel hears all others of its name, those of its own page too. */
function channel(): BroadcastChannel {
  opened ??= new BroadcastChannel(CHANNEL);
  return opened;
}

/** The same host; every change that it takes is reported to the other windows of this browser. */
export function announcing(call: CallHost): CallHost {
  return (async (name: Call, input: Request<Call>) => {
    const result = await call(name, input);
    const touched = TOUCHES[name];
    if (result.ok && touched !== null)
      channel().postMessage({ touched, ...idIn(name, input) } satisfies ChangeElsewhere);
    return result;
  }) as CallHost;
}

/** Listens to what other windows of this browser change. Returns how to stop. */
export function onChangeElsewhere(listener: (change: ChangeElsewhere) => void): () => void {
  const hear = ({ data }: MessageEvent<ChangeElsewhere>) => listener(data);
  channel().addEventListener('message', hear);
  return () => channel().removeEventListener('message', hear);
}
