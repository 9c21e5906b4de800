import { getOpenLayout } from '../../../document/open-layout.svelte.ts';
import { getShop } from '../../../document/shop.svelte.ts';
import type { FindGroup } from '../find-group.ts';

/** Every variant of the shop, those saved last first. */
export function foundVariants(): FindGroup {
  const openLayout = getOpenLayout();
  const shop = getShop();
  return {
    id: 'variants',
    title: 'Cars and variants',
    entries: () =>
      shop.customers
        .flatMap((customer) =>
          customer.cars.flatMap((car) =>
            car.variants.map((variant) => ({ variant, whose: `${customer.name}, ${car.name}` })),
          ),
        )
        .sort((a, b) => b.variant.savedAt - a.variant.savedAt)
        .map(({ variant, whose }) => ({
          id: variant.id,
          name: variant.name,
          aside: openLayout.variant?.id === variant.id ? `${whose} · open` : whose,
          also: whose,
          run: () => void shop.open(variant.id),
        })),
  };
}
