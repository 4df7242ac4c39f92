#include "core/wear/curvature.h"
#include "core/wear/nodes.h"
#include "core/wear/wiener.h"

#include <Eigen/Eigenvalues>
#include <Eigen/LU>
#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <random>

namespace coilbook {
namespace {

Eigen::MatrixXd wienerCovariance(const Eigen::VectorXd& x, const Eigen::VectorXd& v, double k2) {
    Eigen::MatrixXd covariance(x.size(), x.size());
    for (Eigen::Index i = 0; i < x.size(); ++i) {
        for (Eigen::Index j = 0; j < x.size(); ++j) {
            covariance(i, j) = (i == j ? v[i] : 0.0) + k2 * std::min(x[i], x[j]);
        }
    }
    return covariance;
}

// Against Eigen's general inverse.
TEST(WienerTest, InverseAndDeterminantAreThoseOfTheDenseMatrix) {
    std::mt19937 random(3);
    std::uniform_real_distribution<double> step(0.05, 3.0);
    for (const int n : {1, 2, 3, 10, 30}) {
        for (const double k2 : {0.0, 0.0004, 0.09, 4.0}) {
            Eigen::VectorXd x(n);
            Eigen::VectorXd v(n);
            for (Eigen::Index i = 0; i < n; ++i) {
                x[i] = i == 0 ? 0.0 : x[i - 1] + step(random);
                v[i] = step(random);
            }
            const Eigen::MatrixXd dense = wienerCovariance(x, v, k2);
            wear::WienerInverse wiener;
            wiener.compute(x, v, k2);
            Eigen::MatrixXd inverse;
            wiener.writeLowerTo(inverse);
            inverse.triangularView<Eigen::StrictlyUpper>() = inverse.transpose();
            EXPECT_LT((inverse * dense - Eigen::MatrixXd::Identity(n, n)).cwiseAbs().maxCoeff(),
                      1e-11);
            EXPECT_NEAR(wiener.logDeterminant(), std::log(dense.determinant()), 1e-9);
            const Eigen::MatrixXd sides = Eigen::MatrixXd::Random(n, 4);
            Eigen::MatrixXd result;
            wiener.apply(sides, result);
            EXPECT_LT((result - inverse * sides).cwiseAbs().maxCoeff(), 1e-11);
        }
    }
}

TEST(WienerTest, InspectionsWithoutARaceBetweenAreNoDivisionByZero) {
    const Eigen::VectorXd x{{0.0, 0.0, 2.0, 2.0, 2.0, 5.0}};
    const Eigen::VectorXd v = Eigen::VectorXd::Constant(6, 0.3);
    wear::WienerInverse wiener;
    wiener.compute(x, v, 0.04);
    Eigen::MatrixXd inverse;
    wiener.writeLowerTo(inverse);
    inverse.triangularView<Eigen::StrictlyUpper>() = inverse.transpose();
    const Eigen::MatrixXd dense = wienerCovariance(x, v, 0.04);
    EXPECT_NEAR(wiener.logDeterminant(), std::log(dense.determinant()), 1e-6);
    EXPECT_LT((inverse - dense.inverse()).cwiseAbs().maxCoeff(), 1e-5);
}

wear::EtaMatrix randomSymmetric(std::mt19937& random) {
    std::normal_distribution<double> normal;
    wear::EtaMatrix half;
    for (Eigen::Index i = 0; i < half.size(); ++i) {
        half.data()[i] = normal(random);
    }
    return half + half.transpose();
}

TEST(JacobiTest, TurnsASymmetricMatrixIntoItsEigenvalues) {
    std::mt19937 random(11);
    for (int repeat = 0; repeat < 50; ++repeat) {
        const wear::EtaMatrix a = randomSymmetric(random);
        const wear::EigenSystem system = wear::jacobi(a);
        const wear::EtaMatrix again =
            system.vectors * system.values.asDiagonal() * system.vectors.transpose();
        EXPECT_LT((again - a).cwiseAbs().maxCoeff(), 1e-12);
        const wear::EtaMatrix unit = system.vectors.transpose() * system.vectors;
        EXPECT_LT((unit - wear::EtaMatrix::Identity()).cwiseAbs().maxCoeff(), 1e-12);
        wear::Eta sorted = system.values;
        std::sort(sorted.begin(), sorted.end());
        const Eigen::SelfAdjointEigenSolver<wear::EtaMatrix> library(a);
        EXPECT_LT((sorted - library.eigenvalues()).cwiseAbs().maxCoeff(), 1e-12);
    }
}

// Specification, section 4: the half fraction of the nodes depends on order and signs.
TEST(JacobiTest, LeavesADiagonalMatrixInItsOrderWithItsSigns) {
    const wear::Eta values{3.0, -1.0, 7.0, 0.5, 2.0};
    const wear::EigenSystem system = wear::jacobi(values.asDiagonal());
    EXPECT_EQ(system.values, values);
    EXPECT_EQ(system.vectors, wear::EtaMatrix::Identity());
}

// Moments of N(0, I_5): the product of (a-1)!! for even exponents, else 0. One monomial of degree
// five is the price of the half fraction: the product of all five coordinates is the same at all of
// its sixteen points. Odd functions of all five at once are not to be expected of a posterior.
TEST(NodesTest, IntegrateEveryPolynomialOfDegreeFiveButOneExactly) {
    const auto nodes =
        wear::nodesAround(wear::Eta::Zero(), {wear::EtaMatrix::Identity(), wear::Eta::Ones()},
                          [](const wear::Eta& eta) { return 0.5 * eta.squaredNorm(); });
    ASSERT_EQ(nodes.size(), 27U);
    const auto normalMoment = [](int exponent) {
        return exponent % 2 == 1 ? 0.0 : exponent == 4 ? 3.0 : 1.0;
    };
    int checked = 0;
    for (int code = 0; code < 6 * 6 * 6 * 6 * 6; ++code) {
        int degree = 0;
        double expected = 1.0;
        std::array<int, wear::kEta> exponents{};
        for (int i = 0, rest = code; i < wear::kEta; ++i, rest /= 6) {
            exponents[static_cast<std::size_t>(i)] = rest % 6;
            degree += rest % 6;
            expected *= normalMoment(rest % 6);
        }
        if (degree > 5) {
            continue;
        }
        double sum = 0.0;
        for (const wear::Node& node : nodes) {
            double product = node.weight;
            for (int i = 0; i < wear::kEta; ++i) {
                product *= std::pow(node.eta[i], exponents[static_cast<std::size_t>(i)]);
            }
            sum += product;
        }
        const bool ofAllFive = exponents == std::array<int, wear::kEta>{1, 1, 1, 1, 1};
        const double aliased = -16.0 * 25.0 / 784.0 * std::pow(1.4, 2.5);
        EXPECT_NEAR(sum, ofAllFive ? aliased : expected, 1e-12) << code;
        ++checked;
    }
    EXPECT_EQ(checked, 252) << "monomials of degree 0 to 5 in five variables";
}

} // namespace
} // namespace coilbook
