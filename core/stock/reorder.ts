/** What is there of a part and what is wanted, all in thousandths of its unit. */
export interface StockLevel {
  readonly onHand: number;
  readonly reserved: number;
  readonly onOrder: number;
  readonly keepAtLeast: number;
  readonly keepAtMost: number;
  /** Quantity of the smallest pack; at least 1. */
  readonly pack: number;
}

export interface Reorder {
  readonly free: number;
  readonly order: number;
}

/** Free is what nobody has spoken for. Below the least it is ordered up to the most, in whole packs. */
export function reorder(level: StockLevel): Reorder {
  const free = level.onHand - level.reserved;
  const coming = free + level.onOrder;
  if (coming >= level.keepAtLeast) return { free, order: 0 };
  return { free, order: Math.max(0, Math.ceil((level.keepAtMost - coming) / level.pack)) * level.pack };
}
