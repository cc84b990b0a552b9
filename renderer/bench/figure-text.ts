/** A plain figure to a thousandth, without noughts at its end. */
export const figureText = (figure: number): string => String(Number(figure.toFixed(3)));
