/**
 * Our own drawings of four shapes of car. A line is written with the letters of SVG paths (W3C, SVG 2, 9.3): M a point, L
 * straight to another, C along a cubic Bézier curve; all absolute. The front is at the left.
 */
export const CAR_SHAPES = ['coupe', 'saloon', 'estate', 'van'] as const;
export type CarShape = (typeof CAR_SHAPES)[number];

/** Places along a car from above: foot and head of the windscreen, head and foot of the rear window, seams of the doors. */
export interface FromAbove {
  readonly screen: readonly [number, number];
  readonly rear: readonly [number, number];
  readonly seams: readonly number[];
  /** How far its nose is rounded. */
  readonly nose: number;
}

export const ABOVE: Readonly<Record<CarShape, FromAbove>> = {
  coupe: { screen: [345, 455], rear: [640, 825], seams: [360, 625], nose: 190 },
  saloon: { screen: [300, 395], rear: [690, 800], seams: [330, 505, 690], nose: 130 },
  estate: { screen: [290, 380], rear: [862, 918], seams: [320, 490, 665], nose: 130 },
  van: { screen: [95, 185], rear: [916, 936], seams: [150, 330, 560], nose: 60 },
};

/** A car from its left side: the line of its body from the nose over the roof to the tail, and what is drawn on it. */
export interface FromSide {
  readonly over: string;
  readonly on: readonly string[];
  /** The middles of the wheels along the car. */
  readonly wheels: readonly [number, number];
}

export const SIDE: Readonly<Record<CarShape, FromSide>> = {
  coupe: {
    wheels: [200, 790],
    over: 'M34 268 C24 232 40 206 110 192 C200 172 290 164 350 158 C410 122 460 92 560 90 C660 90 740 118 820 158 C880 164 950 172 968 196 C976 226 972 252 966 276',
    on: [
      'M384 158 C430 126 480 106 556 105 L600 106 L606 158 L384 158',
      'M622 158 L616 107 C680 112 724 132 768 158 L622 158',
      'M362 160 C352 200 356 240 372 268 L636 268 C650 240 648 190 616 160',
      'M570 186 L606 186',
    ],
  },
  saloon: {
    wheels: [195, 790],
    over: 'M34 268 C24 230 36 200 100 186 C180 168 250 160 310 154 C360 110 400 82 470 76 C560 70 640 72 690 84 C740 98 780 128 812 152 C880 156 950 162 966 184 C976 220 972 252 966 276',
    on: [
      'M344 154 C384 120 420 96 470 92 L500 90 L500 154 L344 154',
      'M516 154 L516 90 C580 86 640 88 676 96 C700 104 730 128 752 154 L516 154',
      'M326 156 C318 200 322 240 336 268 L508 268 L508 92',
      'M508 268 L680 268 C692 236 716 222 722 190 L690 102',
      'M462 182 L498 182',
      'M656 182 L692 182',
    ],
  },
  estate: {
    wheels: [195, 790],
    over: 'M34 268 C24 230 36 200 100 186 C180 168 240 160 300 154 C350 108 390 78 460 72 C600 64 760 66 880 80 C930 100 950 130 960 160 C972 200 972 250 966 276',
    on: [
      'M334 154 C374 118 410 92 460 88 L490 86 L490 154 L334 154',
      'M506 154 L506 86 C570 82 630 82 676 84 L676 154 L506 154',
      'M692 154 L692 84 C770 86 830 90 872 96 C890 116 900 136 908 154 L692 154',
      'M316 156 C308 200 312 240 326 268 L498 268 L498 88',
      'M498 268 L676 268 C688 236 706 222 706 190 L684 156 L684 84',
      'M452 182 L488 182',
      'M640 182 L676 182',
    ],
  },
  van: {
    wheels: [185, 800],
    over: 'M26 268 C20 220 22 196 40 182 C70 168 90 160 108 152 C140 90 160 44 230 32 C480 22 780 22 930 30 C962 34 968 60 972 100 C978 180 978 230 972 276',
    on: [
      'M142 150 C164 104 184 68 228 60 L318 58 L318 150 L142 150',
      'M122 154 L116 206 L196 206 C232 208 262 232 264 268 L334 268 L334 44',
      'M334 60 L570 56 L570 268 L334 268',
      'M288 178 L322 178',
      'M350 178 L384 178',
      'M570 70 L720 68',
      'M946 60 L952 268',
    ],
  },
};
