/* Signs of numbers by Calcium: by qqbar, from minimal polynomials, or by ca, from
   fields that it finds itself. A line of the input is a number, step by step:

     q 2/3      a rational
     c 1/9      the cosine of that many half turns
     + 0 1      and - * /, with the places of earlier steps
     r 2        a square root

   The answer of a line is the sign of its last step, "negative" or "zero" where a
   root or a quotient has none, and ? where it would take too long or is not found;
   then the milliseconds. */

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>
#include "calcium/ca.h"
#include "calcium/qqbar.h"

enum { most_steps = 1 << 16, failed = 9, negative = 8, divided = 7 };

static slong degree_limit = 96, bits_limit = 4000;

/* The values of steps so far, by qqbar. */
static qqbar_t *algebraic;

static int bounded(slong i)
{
    return qqbar_degree(algebraic[i]) <= degree_limit && qqbar_height_bits(algebraic[i]) <= bits_limit;
}

static int qqbar_step(slong n, char op, const fmpq_t q, slong i, slong j)
{
    qqbar_struct *z = algebraic[n], *x = algebraic[i], *y = algebraic[j];
    if (strchr("+-*/", op) && !qqbar_binop_within_limits(x, y, degree_limit, bits_limit))
        return failed;
    switch (op) {
    case 'q': qqbar_set_fmpq(z, q); break;
    case 'c': qqbar_cos_pi(z, fmpz_get_si(fmpq_numref(q)), fmpz_get_si(fmpq_denref(q))); break;
    case '+': qqbar_add(z, x, y); break;
    case '-': qqbar_sub(z, x, y); break;
    case '*': qqbar_mul(z, x, y); break;
    case '/':
        if (qqbar_is_zero(y))
            return divided;
        qqbar_div(z, x, y);
        break;
    case 'r':
        if (2 * qqbar_degree(x) > degree_limit)
            return failed;
        if (qqbar_sgn_re(x) < 0)
            return negative;
        qqbar_sqrt(z, x);
        break;
    }
    return bounded(n) ? 0 : failed;
}

/* And by ca. */
static ca_t *symbolic;
static ca_ctx_t ctx;

static int ca_step(slong n, char op, const fmpq_t q, slong i, slong j)
{
    ca_struct *z = symbolic[n], *x = symbolic[i], *y = symbolic[j];
    switch (op) {
    case 'q': ca_set_fmpq(z, q, ctx); break;
    case 'c': {
        qqbar_t c;
        qqbar_init(c);
        qqbar_cos_pi(c, fmpz_get_si(fmpq_numref(q)), fmpz_get_si(fmpq_denref(q)));
        ca_set_qqbar(z, c, ctx);
        qqbar_clear(c);
        break;
    }
    case '+': ca_add(z, x, y, ctx); break;
    case '-': ca_sub(z, x, y, ctx); break;
    case '*': ca_mul(z, x, y, ctx); break;
    case '/': ca_div(z, x, y, ctx); break;
    case 'r': ca_sqrt(z, x, ctx); break;
    }
    return 0;
}

static int ca_sign(slong n)
{
    switch (ca_check_is_zero(symbolic[n], ctx)) {
    case T_TRUE: return 0;
    case T_UNKNOWN: return failed;
    default: return ca_check_gt(symbolic[n], symbolic[0], ctx) == T_TRUE ? 1 : -1;
    }
}

/* Works a line out; symbolic[0] is 0, so that steps stand one place further. */
static int line_sign(char *line, int by_ca)
{
    slong n = 1;
    int why = 0;
    fmpq_t q;
    fmpq_init(q);
    if (by_ca)
        ca_zero(symbolic[0], ctx);
    for (char *op = strtok(line, " \n"); op && !why && n < most_steps; op = strtok(NULL, " \n"), n++) {
        slong i = 0, j = 0;
        char *first = strtok(NULL, " \n");
        if (strchr("qc", *op))
            fmpq_set_str(q, first, 10);
        else
            i = atol(first) + 1;
        if (strchr("+-*/", *op))
            j = atol(strtok(NULL, " \n")) + 1;
        why = (by_ca ? ca_step : qqbar_step)(n, *op, q, i, j);
    }
    fmpq_clear(q);
    if (why)
        return why;
    return by_ca ? ca_sign(n - 1) : qqbar_sgn_re(algebraic[n - 1]);
}

static double now(void)
{
    struct timespec t;
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &t);
    return t.tv_sec * 1e3 + t.tv_nsec / 1e6;
}

int main(int argc, char **argv)
{
    int by_ca = argc > 1 && !strcmp(argv[1], "ca");
    char *line = NULL;
    size_t size = 0;
    if (argc > 2)
        degree_limit = atol(argv[2]);
    algebraic = malloc(most_steps * sizeof *algebraic);
    symbolic = malloc(most_steps * sizeof *symbolic);
    while (getline(&line, &size, stdin) > 0) {
        slong steps = 1;
        for (char *c = line; *c; c++)
            steps += *c == ' ' || *c == '\n';
        double start = now();
        ca_ctx_init(ctx);
        for (slong i = 0; i < steps; i++) {
            qqbar_init(algebraic[i]);
            ca_init(symbolic[i], ctx);
        }
        int s = line_sign(line, by_ca);
        for (slong i = 0; i < steps; i++) {
            qqbar_clear(algebraic[i]);
            ca_clear(symbolic[i], ctx);
        }
        ca_ctx_clear(ctx);
        double spent = now() - start;
        if (s == failed)
            printf("? %.4f\n", spent);
        else if (s == negative || s == divided)
            printf("%s %.4f\n", s == negative ? "negative" : "zero", spent);
        else
            printf("%d %.4f\n", s, spent);
        fflush(stdout);
    }
    return 0;
}
