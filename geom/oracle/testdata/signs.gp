\\ Signs of numbers made by + - * / and square roots from rationals and cosines,
\\ proved: every value carries its error, and one that errors cannot tell from 0 is
\\ called 0 only below a separation bound.
\\
\\ A number is [v, e, u, l]: it lies within e of v, and it is U/L for algebraic
\\ integers U and L, neither of which has a conjugate above 2^u and 2^l. If the
\\ field of all of them has degree D, it is 0 or at least 2^-(u(D-1) + l): the norm
\\ of U is a whole number. (C. Burnikel, R. Fleischer, K. Mehlhorn, S. Schirra, A
\\ strong and easily computable separation bound for arithmetic expressions
\\ involving radicals, Algorithmica 27, 2000.)

B = 0;      \\ bits of the values
D = 1;      \\ degree of the field
want = 0;   \\ bits that would have told

brief(x) = bitprecision(x * 1., 64);
rounding(v) = if(type(v) == "t_REAL", brief(abs(v)) * 2.^(4 - B), 0);
made(v, e, u, l) = {
  if(v == 0, v = 0);
  v = bitprecision(v, B);
  [v, e + rounding(v), u, l]
};
log2(x) = brief(log(x) / log(2));
logsum(a, b) = max(a, b) + log2(1 + 2.^(-brief(abs(a - b)))) + 2.^-40;

{Signed(x) = my(size = brief(abs(x[1])), bound);
  if(size > x[2], return(sign(x[1])));
  bound = x[3] * (D - 1) + x[4];
  if(size + x[2] == 0 || log2(size + x[2]) < -bound - 1, return(0));
  want = bound;
  error("low")};

Rational(q) = made(q, 0, log2(max(1, abs(numerator(q)))), log2(denominator(q)));
\\ The cosine of d degrees is half an algebraic integer.
Cosine(d) = my(v = cos(Pi * d / 180)); made(v, 2.^(8 - B), 1, 1);
\\ No separation bound holds for the half of a circle's way round.
Circle() = made(Pi, 2.^(8 - B), 10^6, 10^6);
Sum(x, y) = made(x[1] + y[1], x[2] + y[2], logsum(x[3] + y[4], x[4] + y[3]), x[4] + y[4]);
Difference(x, y) = Sum(x, [-y[1], y[2], y[3], y[4]]);
Product(x, y) = made(x[1] * y[1], brief(abs(x[1])) * y[2] + brief(abs(y[1])) * x[2] + x[2] * y[2], x[3] + y[3], x[4] + y[4]);
{Quotient(x, y) = my(v);
  if(Signed(y) == 0, error("zero"));
  v = x[1] / y[1];
  made(v, (x[2] + brief(abs(v)) * y[2]) / (brief(abs(y[1])) - y[2]), x[3] + y[4], x[4] + y[3])};
\\ Root of U/L is that of UL over L, or U over that of UL.
{Root(x) = my(s = Signed(x), v, m = (x[3] + x[4]) / 2);
  if(s < 0, error("negative"));
  if(s == 0, return([0, 0, 0, 0]));
  v = sqrt(bitprecision(x[1] * 1., B));
  made(v, x[2] / sqrt(brief(x[1]) - x[2]), if(x[3] >= x[4], m, x[3]), if(x[3] >= x[4], x[4], m))};

\\ Tell prints the sign of f(), whose field has at most the degree given: "near" for
\\ what is 0 to 2000 digits where a proof would need more than "most" bits.
most = 30000;
{Tell(degree, f) = my(said = "low");
  D = degree; B = 160;
  while(said == "low",
    default(realbitprecision, B);
    said = iferr(Str(Signed(f())), E, if(errname(E) == "e_USER", component(E, 1)[1], Str(E)));
    if(said == "low",
      if(B >= most || B > 6700 && want > most, said = "near",
        B = if(want + 400 <= max(8 * B, 2000), ceil(want) + 400, 4 * B))));
  print(said)};
