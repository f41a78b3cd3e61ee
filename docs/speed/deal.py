"""The demo deal, scenarios/juniper-lane.yaml, in numpy: deal.py TRIALS RESULTS

The sums are those of deal.c, in whole cents, over a block of trials at a time. Trials are
put in the order of their months, so that a block has few more months than each trial of it
needs. What numpy is quick at was found by trying: every step writes into memory that is
there already; numbers stand in arrays without a dimension, the least and the most are
taken of whole arrays; and a block is as long as what it needs at once fits the cache.
"""
import sys
import time

import numpy as np
from numpy import add, ceil, divide, equal, floor, greater, maximum, minimum, multiply, subtract

BLOCK = 8192  # trials
BATCH = 65536  # trials that are put in order together

LEAD, WORKS, MARKETING, ESCROW = 2 * 7 * 12 / 365, 3.5, 5 * 7 * 12 / 365, 5 * 7 * 12 / 365
PAUSE = 3.5 * 0.712859274592583238559580446183040714298514  # 80% is spent
number = np.array
HALF, TIDY = number(0.50000005), number(5e-10)  # half a cent and half of a 9th decimal; half of a 9th decimal
BASE, TAX, POWER, YARD, STAGING, PREMIUM = map(number, (5288816.0, 412000 / 12, 23800.0, 8500.0, 62000.0, 194000.0))
TO_BUY, AT_CLOSING = -4688918.0, 17765000.0
RATE, RETAINED, DRAW_FEE = map(number, (0.1125 / 12, 0.1, 17500.0))
TERM, EXTENSION, EXTENSION_FEE = map(number, (9.0, 3.0, 119236.0))
DISCOUNTED, COMMISSION, FIXED, LOW_TAX, HIGH_TAX = map(number, (98.0, 0.025, 340000.0, 0.005, 0.0075))

memory = np.empty((21, BLOCK))  # of a block
ZERO, HOLDBACK, AFTER_PAUSE, KEPT_BACK, BRACKET = (np.full(BLOCK, x) for x in (0, 6082138, WORKS - PAUSE, 0.75, 25000000))


def cents(x):
    """Rounds in place."""
    add(x, HALF, x)
    return floor(x, x)


def up(x, to):
    subtract(x, TIDY, to)
    return ceil(to, to)


def work_out(value, overrun, standstill, late, profit, roi, cash, hold):
    n = len(value)
    (works_end, unsold, release, spend, taxes, powers, yards, stagings, flow, low, balance, spent, earned, asked, kept,
     held, to_date, extended, a, b, c) = memory[:, :n]
    zero, holdback, after_pause, kept_back, bracket = ZERO[:n], HOLDBACK[:n], AFTER_PAUSE[:n], KEPT_BACK[:n], BRACKET[:n]
    add(standstill, LEAD + WORKS, works_end)
    add(late, MARKETING, unsold)
    add(works_end, unsold, hold)
    add(hold, ESCROW, hold)
    add(up(works_end, release), 1.0, release)
    cents(multiply(add(overrun, 1.0, spend), BASE, spend))
    cents(multiply(hold, TAX, taxes))
    cents(multiply(hold, POWER, powers))
    cents(multiply(hold, YARD, yards))
    cents(multiply(unsold, STAGING, stagings))
    balance.fill(AT_CLOSING)
    flow.fill(TO_BUY)
    low.fill(TO_BUY)
    for x in (spent, earned, asked, kept, extended, held):
        x.fill(0)
    shortest, longest, works = hold.min(), up(hold, a).max(), release.max()
    for m in range(1, int(longest) + 1):
        month = number(float(m))
        owned = month if m <= shortest else minimum(hold, np.full(n, float(m)))
        cents(multiply(taxes, divide(owned, hold, a), to_date))
        add(to_date, cents(multiply(powers, a, b)), to_date)
        add(to_date, cents(multiply(yards, a, b)), to_date)
        if m > LEAD + WORKS:
            minimum(maximum(subtract(owned, works_end, a), zero, a), unsold, a)
            add(to_date, cents(multiply(stagings, divide(a, unsold, a), a)), to_date)
        if m > 12:  # the first premium is paid at the purchase
            add(to_date, (np.ceil(owned / 12 - 5e-10) - 1) * PREMIUM, to_date)
        multiply(balance, RATE, a)
        if m > shortest:
            multiply(a, maximum(subtract(owned, m - 1.0, b), zero, b), a)
        subtract(flow, cents(a), flow)
        subtract(flow, to_date, flow)
        add(flow, held, flow)
        held, to_date = to_date, held
        if m > 9:
            subtract(owned, TERM, a)
            maximum(up(divide(a, EXTENSION, a), a), zero, a)
            subtract(a, extended, b)
            subtract(flow, multiply(b, EXTENSION_FEE, b), flow)
            extended, a = a, extended
        if m > works:
            continue
        passed = m - LEAD
        if passed <= PAUSE:
            done = passed / WORKS
            multiply(spend, 3 * done * done - 2 * done * done * done, a)
        else:
            minimum(maximum(subtract(passed - PAUSE, standstill, a), zero, a), after_pause, a)
            divide(add(a, PAUSE, a), WORKS, a)
            multiply(a, a, b)
            multiply(subtract(3.0, multiply(a, 2.0, a), a), b, a)
            multiply(a, spend, a)
        subtract(flow, cents(a), flow)
        add(flow, spent, flow)
        if m > 1:
            subtract(flow, multiply(greater(asked, zero, b), DRAW_FEE, b), flow)
        minimum(low, flow, low)  # before the draw comes in
        if m > LEAD + WORKS + 1:
            add(asked, multiply(equal(release, month, b), kept, b), asked)
        add(flow, asked, flow)
        add(balance, asked, balance)
        minimum(a, holdback, b)
        subtract(b, earned, earned)
        cents(multiply(earned, RETAINED, c))
        add(kept, c, kept)
        subtract(earned, c, asked)
        earned, b = b, earned
        spent, a = a, spent
    # The sale: see deal.c.
    cents(multiply(value, DISCOUNTED, a))
    subtract(a, balance, balance)
    multiply(cents(multiply(a, COMMISSION, b)), 2.0, b)
    subtract(balance, b, balance)
    minimum(a, bracket, b)
    subtract(a, b, a)
    add(multiply(b, LOW_TAX, b), multiply(a, HIGH_TAX, a), a)
    subtract(balance, cents(a), balance)
    left = subtract(balance, FIXED, balance)
    minimum(low, add(minimum(left, zero, a), flow, a), low)
    add(flow, left, flow)
    divide(hold, 12.0, a)
    maximum(minimum(subtract(up(a, b), a, b), kept_back, b), zero, b)
    add(flow, cents(multiply(b, PREMIUM, b)), flow)
    divide(flow, 100.0, profit)
    divide(low, -100.0, cash)
    divide(profit, cash, roi)


ordered, answers = np.empty((4, BATCH)), np.empty((4, BATCH))


def run(trials, results):
    for at in range(0, trials.shape[1], BATCH):
        some = trials[:, at:at + BATCH]
        n = some.shape[1]
        months = np.ceil(some[2] + some[3] + (LEAD + WORKS + MARKETING + ESCROW)).astype(np.int16)
        order = np.argsort(months, kind="stable")
        x = np.take(some, order, axis=1, out=ordered[:, :n], mode="clip")
        for to in range(0, n, BLOCK):
            work_out(*x[:, to:min(to + BLOCK, n)], *answers[:, to:min(to + BLOCK, n)])
        for to, y in zip(results, answers):
            to[at:at + n][order] = y[:n]


def main():
    trials = np.fromfile(sys.argv[1], "<f8").reshape(4, -1)
    results = np.empty_like(trials)
    best = np.inf
    for _ in range(6):  # the first warms up
        began = time.process_time()
        run(trials, results)
        best = min(best, time.process_time() - began)
    print(f"{best / trials.shape[1] * 1e9:.3f}")  # ns a trial
    results.tofile(sys.argv[2])


main()
