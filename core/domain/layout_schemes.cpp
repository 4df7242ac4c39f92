#include "core/domain/layout_schemes.h"

#include <initializer_list>

namespace coilbook {

namespace {

Bank bankOf(const QString& name, std::initializer_list<int> cylinders) {
    Bank bank{name, {}};
    bool exhaustFirst = true; // the springs of a pair of cylinders mirror each other
    for (const int number : cylinders) {
        const Valve first = exhaustFirst ? Valve::Exhaust : Valve::Intake;
        const Valve second = exhaustFirst ? Valve::Intake : Valve::Exhaust;
        bank.places.push_back({Cylinder(number), first});
        bank.places.push_back({Cylinder(number), second});
        exhaustFirst = !exhaustFirst;
    }
    return bank;
}

std::vector<Bank> banksOf(V8Numbering numbering) {
    const QString left = QStringLiteral("Left");
    const QString right = QStringLiteral("Right");
    switch (numbering) {
    case V8Numbering::OddLeft:
        return {bankOf(left, {1, 3, 5, 7}), bankOf(right, {2, 4, 6, 8})};
    case V8Numbering::FirstRight:
        return {bankOf(left, {5, 6, 7, 8}), bankOf(right, {1, 2, 3, 4})};
    case V8Numbering::FirstLeft:
        return {bankOf(left, {1, 2, 3, 4}), bankOf(right, {5, 6, 7, 8})};
    }
    Q_UNREACHABLE();
}

LayoutScheme schemeOf(V8Numbering numbering, CrankKind crank, std::initializer_list<int> fires) {
    LayoutScheme scheme{numbering, crank, {}};
    scheme.layout.banks = banksOf(numbering);
    for (const int number : fires) {
        scheme.layout.firingOrder.emplace_back(number);
    }
    return scheme;
}

} // namespace

const std::vector<LayoutScheme>& v8Schemes() {
    using enum V8Numbering;
    using enum CrankKind;
    static const std::vector<LayoutScheme> schemes{
        schemeOf(OddLeft, CrossPlane, {1, 8, 4, 3, 6, 5, 7, 2}),
        schemeOf(OddLeft, CrossPlane, {1, 8, 7, 2, 6, 5, 4, 3}),
        schemeOf(FirstRight, CrossPlane, {1, 3, 7, 2, 6, 5, 4, 8}),
        schemeOf(FirstRight, CrossPlane, {1, 5, 4, 2, 6, 3, 7, 8}),
        schemeOf(FirstLeft, CrossPlane, {1, 5, 4, 8, 6, 3, 7, 2}),
        schemeOf(FirstLeft, FlatPlane, {1, 8, 3, 6, 4, 5, 2, 7}),
    };
    return schemes;
}

} // namespace coilbook
