#!/usr/bin/env python3
"""Recomputes quotations with Python's decimal and fraction arithmetic.

Reads the file a test wrote, one record a line, and prices it again from the definitions of the units; shares nothing
with the program. Prints the first difference and exits with 1.

  book     DIGITS DEPOSIT_PPM DISCOUNT_PPM FURTHER_DISCOUNT
  line     QUANTITY UNIT PRICE_UNIT ROLL_WIDTH_MM PACK PACK_UNIT UNIT_OF_GOODS SALE COST -> QUANTITY AMOUNT COST
           DISCOUNT_PPM TAX_PPM OPTIONAL
  tax      PPM NET TAX
  payment  PPM AMOUNT
  total    SUM DISCOUNT NET TAX TOTAL DEPOSIT COST MARGIN
"""
import sys
from decimal import ROUND_HALF_UP, Decimal, getcontext
from fractions import Fraction

getcontext().prec = 100

INCH = Fraction(254, 10000)
FOOT, YARD = 12 * INCH, 36 * INCH
SIZES = {
    "m": ("length", Fraction(1)), "ft": ("length", FOOT), "yd": ("length", YARD),
    "m2": ("area", Fraction(1)), "sq ft": ("area", FOOT ** 2), "sq yd": ("area", YARD ** 2),
    "L": ("volume", Fraction(1)), "gal": ("volume", Fraction("3.785411784")),
}


def to_decimal(value):
    """A fraction as a decimal, exact to far more digits than a half could hide in."""
    return Decimal(value.numerator) / Decimal(value.denominator)


def round_to(value, digits):
    return to_decimal(value).quantize(Decimal(1).scaleb(-digits), rounding=ROUND_HALF_UP)


def measure(quantity, unit, wanted, width):
    """A quantity of one unit in another, as an exact fraction."""
    if unit == wanted:
        return quantity
    (kind, size), (wanted_kind, wanted_size) = SIZES[unit], SIZES[wanted]
    amount = quantity * size
    if (kind, wanted_kind) == ("length", "area"):
        amount *= width
    elif (kind, wanted_kind) == ("area", "length"):
        amount /= width
    else:
        assert kind == wanted_kind, (unit, wanted)
    return amount / wanted_size


def convert(quantity, unit, wanted, width, pack, pack_unit, goods_unit):
    if wanted == unit:
        return quantity
    if pack and wanted == pack_unit != goods_unit:
        return measure(quantity, unit, goods_unit, width) / pack
    return measure(quantity, unit, wanted, width)


class Checker:
    def __init__(self):
        self.number = self.lines = self.quotes = 0

    def check(self, what, got, wanted):
        if Decimal(got) != wanted:
            sys.exit(f"record {self.number}: {what} is {got}, should be {wanted}")

    def book(self, digits, deposit_ppm, discount_ppm, further):
        self.digits, self.deposit = int(digits), Fraction(int(deposit_ppm), 10**6)
        self.discount_rate, self.further = Fraction(int(discount_ppm), 10**6), Decimal(further)
        self.sum = self.cost = Decimal(0)
        self.by_rate, self.taxes, self.payments = {}, [], []

    def line(self, quantity, unit, wanted, width_mm, pack, pack_unit, goods_unit, sale, cost, got, amount, got_cost,
             discount_ppm, tax_ppm, optional):
        exact = convert(Fraction(quantity), unit, wanted, Fraction(width_mm) / 1000, Fraction(pack), pack_unit, goods_unit)
        priced = round_to(exact, 6)
        self.check("quantity", got, priced)
        gross = round_to(Fraction(sale) * Fraction(priced), self.digits)
        wanted_amount = gross - round_to(Fraction(gross) * Fraction(int(discount_ppm), 10**6), self.digits)
        wanted_cost = round_to(Fraction(cost) * Fraction(priced), self.digits)
        self.check("amount", amount, wanted_amount)
        self.check("cost", got_cost, wanted_cost)
        if optional == "0":
            self.sum += wanted_amount
            self.cost += wanted_cost
            self.by_rate[int(tax_ppm)] = self.by_rate.get(int(tax_ppm), Decimal(0)) + wanted_amount
        self.lines += 1

    def tax(self, ppm, net, tax):
        self.taxes.append((int(ppm), net, tax))

    def payment(self, ppm, amount):
        self.payments.append((int(ppm), amount))

    def check_taxes(self, discount):
        """The discount lessens each rate's net; the shares up to each rate are rounded, so that they add up to it."""
        if [ppm for ppm, _, _ in self.taxes] != sorted(self.by_rate):
            sys.exit(f"record {self.number}: rates {self.taxes}, should be {sorted(self.by_rate)}")
        up_to = taken = total = Decimal(0)
        for i, (ppm, net, tax) in enumerate(self.taxes):
            up_to += self.by_rate[ppm]
            due = discount
            if self.sum and i + 1 < len(self.taxes):
                due = round_to(Fraction(discount) * Fraction(up_to) / Fraction(self.sum), self.digits)
            wanted_net = self.by_rate[ppm] - (due - taken)
            taken = due
            wanted_tax = round_to(Fraction(wanted_net) * Fraction(ppm, 10**6), self.digits)
            self.check(f"net at {ppm}", net, wanted_net)
            self.check(f"tax at {ppm}", tax, wanted_tax)
            total += wanted_tax
        return total

    def check_payments(self, total):
        parts, paid = 0, Decimal(0)
        for ppm, amount in self.payments:
            parts += ppm
            due = round_to(Fraction(total) * Fraction(parts, 10**6), self.digits)
            self.check("payment", amount, due - paid)
            paid = due
        if self.payments and parts != 10**6:
            sys.exit(f"record {self.number}: the payments are {parts} millionths")
        return Decimal(self.payments[0][1]) if self.payments else round_to(Fraction(total) * self.deposit, self.digits)

    def total(self, sums, discount, net, tax, total, deposit, cost, margin):
        wanted_discount = round_to(Fraction(self.sum) * self.discount_rate, self.digits) + self.further
        self.check("sum", sums, self.sum)
        self.check("discount", discount, wanted_discount)
        self.check("net", net, self.sum - wanted_discount)
        wanted_tax = self.check_taxes(wanted_discount)
        self.check("tax", tax, wanted_tax)
        wanted_total = self.sum - wanted_discount + wanted_tax
        self.check("total", total, wanted_total)
        self.check("deposit", deposit, self.check_payments(wanted_total))
        self.check("cost", cost, self.cost)
        self.check("margin", margin, self.sum - wanted_discount - self.cost)
        self.quotes += 1


def main():
    checker = Checker()
    with open(sys.argv[1], encoding="utf-8") as records:
        for record in records:
            checker.number += 1
            kind, *fields = record.rstrip("\n").split("\t")
            getattr(checker, kind)(*fields)
    print(checker.quotes, checker.lines)


main()
